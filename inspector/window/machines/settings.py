"""How the window looks: scheme and size of type, chosen by touch as well as by keys."""

from PySide6.QtWidgets import QWidget

from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.look.look import Look
from inspector.window.look.text import SectionHead, Text

SCHEMES = ("system", "light", "dark", "sunlight")
SCALES = (100, 125, 150, 175)


class Appearance(Column):
    """Two rows of keys; what is chosen holds at once and is remembered."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, edge=0, top=0, parent=parent)
        words = {"system": tr("as the system")}
        self.schemes = ChoiceKeys(look, [Option(s, words.get(s, tr(s))) for s in SCHEMES], held="kept")
        self.scales = ChoiceKeys(look, [Option(str(s), tr("{n} %", n=s)) for s in SCALES], held="kept")
        self.add(SectionHead(look, tr("How it looks")))
        self.add(self.schemes, 2)
        self.add(Text(look, tr("Size of type"), ink="soft"), 3)
        self.add(self.scales, 1)
        self.add(Text(look, tr("F1 lists the keys of the keyboard."), ink="soft"), 3)
        self.schemes.picked.connect(look.set_scheme)
        self.scales.picked.connect(lambda percent: look.set_text_scale(int(percent) / 100))
        look.changed.connect(self.show_look)
        self.show_look()

    def show_look(self) -> None:
        """The keys hold what holds now."""
        self.schemes.set_held(self.look.scheme)
        self.scales.set_held(str(round(self.look.text_scale * 100)))
