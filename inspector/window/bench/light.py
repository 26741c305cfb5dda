"""Tools for reading a stamping: grey, local contrast, relief from one side, inverted, larger, turned."""

from functools import partial

from PySide6.QtWidgets import QWidget

from inspector.photo.relief import Tools
from inspector.texts import tr
from inspector.window.bench.canvas import STEP, Canvas
from inspector.window.bench.dial import LightDial
from inspector.window.bench.panel import Panel
from inspector.window.bench.subject import Subject
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.text import SectionHead, Text

QUARTER, LEAN = 90.0, 2.0


class LightPanel(Panel):
    """Each tool works on the copy alone; the picture can be pulled about meanwhile."""

    def __init__(self, subject: Subject, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(subject, canvas, parent)
        look = self.look
        self.tools = ChoiceKeys(look, [
            Option("contrast", tr("local contrast")), Option("relief", tr("relief")),
            Option("grey", tr("grey")), Option("invert", tr("inverted")),
        ], many=True, held="kept")  # fmt: skip
        self.dial = LightDial(look)
        self.said = Text(look, tr("Light from the side of the stroke: turn it by hand."), ink="soft", step="small")
        self.larger = Key(look, "+", step="key", name=tr("Larger"))
        self.smaller = Key(look, "−", step="key", name=tr("Smaller"))
        self.whole = Key(look, tr("whole"), name=tr("Show the whole photograph"))
        self.full = Key(look, "1:1", name=tr("One pixel of the photograph to one of the screen"))
        self.left = Key(look, "−90°", name=tr("Turn to the left by a quarter"))
        self.right = Key(look, "+90°", name=tr("Turn to the right by a quarter"))
        self.back = Key(look, "−2°", name=tr("Lean to the left a little"))
        self.on = Key(look, "+2°", name=tr("Lean to the right a little"))
        self.add(SectionHead(look, tr("Tools")))
        self.add(self.tools, 2)
        self.add(self.dial, 2)
        self.add(self.said, 1)
        self.add(SectionHead(look, tr("Larger, turned")))
        self.add(KeyRow(look, [self.larger, self.smaller, self.whole, self.full], fit="fill"), 2)
        self.add(KeyRow(look, [self.left, self.right, self.back, self.on], fit="fill"), 2)
        self.add(Text(look, tr(
            "These tools draw attention to what the light did. They add nothing that is not in the photograph, and "
            "what they show is a copy: read figures in the photograph itself too.",
        ), ink="soft", step="small"), 2)  # fmt: skip
        self._connect()
        self._show_dial()

    def _connect(self) -> None:
        canvas = self.canvas
        self.tools.changed.connect(lambda _: self._use())
        self.dial.turned.connect(lambda _: self._use(quick=True))
        self.dial.set_down.connect(lambda _: self._use())
        self.larger.clicked.connect(lambda: canvas.zoom(STEP))
        self.smaller.clicked.connect(lambda: canvas.zoom(1 / STEP))
        self.whole.clicked.connect(canvas.whole)
        self.full.clicked.connect(canvas.one_to_one)
        for key, by in ((self.left, -QUARTER), (self.right, QUARTER), (self.back, -LEAN), (self.on, LEAN)):
            key.clicked.connect(partial(self._turn, by))

    def _turn(self, by: float, _: bool = False) -> None:
        self.canvas.turn(by)
        if "relief" in self.tools.held():
            self._use()  # the light stays where it is on the screen

    def chosen(self) -> Tools:
        """The tools as they are set."""
        held = self.tools.held()
        light = self.dial.degrees + self.canvas.sight.turn if "relief" in held else None
        return Tools("grey" in held, "contrast" in held, light, "invert" in held)

    def _use(self, *, quick: bool = False) -> None:
        self._show_dial()
        self.subject.copy.use(self.chosen(), quick=quick)

    def _show_dial(self) -> None:
        there = "relief" in self.tools.held()
        self.dial.setVisible(there)
        self.said.setVisible(there)
