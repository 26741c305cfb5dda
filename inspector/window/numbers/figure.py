"""The figure at which one is: how well it was seen, and what it could be."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from inspector.judgement.lookalikes import suggestions
from inspector.record.reading import Figure
from inspector.record.words import Clarity
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.look.look import Look
from inspector.window.look.text import Text
from inspector.window.numbers.labelled import Labelled

MORE, OFFERED, CLOSE = "more", 6, 1.0


class Offered(ChoiceKeys):
    """What a figure could be, close together so that seven stand on one line."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, many=True, held="kept", fit="fill", step="key")
        self._gap = CLOSE

    def offer(self, number: int, figure: Figure) -> None:
        """What this figure, the ``number``-th, is or could be is held, and its look-alikes are offered."""
        offered = offers(figure)
        self.set_options([*(Option(text, text) for text in offered), Option(MORE, tr("more"))])
        self.set_held(*figure.could_be)
        for text in offered:
            self.key(text).step = "key"
            self.key(text).say(name=tr("Figure {n} could be {what}", n=number, what=text))
        self.key(MORE).step = "small"
        self.key(MORE).say(name=tr("Figure {n} could be something else", n=number))
        for key in self.keys:
            key.updateGeometry()


class FigurePanel(Column):
    """Keys for one figure.

    ``clarity(Clarity)`` and ``could_be(text)`` tell what was touched, ``more`` that something else is wanted.
    """

    clarity = Signal(object)
    could_be = Signal(str)
    more = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, edge=0, top=0, parent=parent)
        self.how_clear = ChoiceKeys(look, [Option(c.value, tr(c.value)) for c in Clarity])
        self.others = Offered(look)
        self.is_row = Labelled(look, "", self.how_clear)
        self.could_row = Labelled(look, tr("It could be"), self.others)
        self.hint = Text(look, ink="soft")
        self.add(self.is_row)
        self.add(self.could_row, 2)
        self.add(self.hint, 2)
        self.how_clear.picked.connect(lambda word: self.clarity.emit(Clarity(word)))
        self.others.picked.connect(self._picked)

    def _picked(self, option: str) -> None:
        if option == MORE:
            self.more.emit()
        else:
            self.could_be.emit(option)

    def show_figure(self, number: int, figure: Figure | None, joining: bool) -> None:
        """The panel shows this figure; where there is none yet, how one writes."""
        there = figure is not None
        self.is_row.setVisible(there)
        self.could_row.setVisible(there)
        self.hint.setVisible(not there or joining)
        if figure is None:
            self.hint.say(tr(
                "Type each figure as you see it, or touch the empty cell. A space leaves a gap, ? is unreadable, "
                "a comma says “or”: 8,3.",
            ))  # fmt: skip
            return
        self.hint.say(tr("Type or touch what else figure {n} could be.", n=number))
        self.is_row.label.say(tr("Figure {n} is", n=number))
        self.how_clear.set_held(figure.clarity.value)
        for key, clarity in zip(self.how_clear.keys, Clarity, strict=True):
            key.setAccessibleName(tr("Figure {n} is {what}", n=number, what=tr(clarity.value)))
        self.others.offer(number, figure)


def offers(figure: Figure) -> tuple[str, ...]:
    """What the figure is or could be, then what is taken for that: figures for a figure first, letters for a letter."""
    alike = [other for text in figure.could_be for other in suggestions(text)]
    first = figure.could_be[0] if figure.could_be else ""
    alike.sort(key=lambda text: text.isdigit() != first.isdigit())
    return tuple(dict.fromkeys((*figure.could_be, *alike)))[: max(OFFERED, len(figure.could_be))]
