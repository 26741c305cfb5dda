"""What every view of Money shares: columns that are shown from the reckoning when they are looked at."""

from abc import abstractmethod
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.texts import Say
from inspector.window.look.columns import Column, Columns
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book


class View(QWidget):
    """One view; ``wanted(view, item)`` asks for another one, at that item where one is named."""

    wanted = Signal(str, str)

    def __init__(self, book: Book, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.book, self.look = book, book.desk.look

    def stand(self, columns: Sequence[tuple[QWidget, float]], feet: Mapping[QWidget, QWidget] | None = None) -> Columns:
        """These columns are what the view shows."""
        made = Columns(self.look, columns, beside=False, feet=feet)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(made)
        return made

    @abstractmethod
    def show_money(self) -> None:
        """Everything as the record stands."""

    def open_at(self, item: str) -> None:
        """What belongs to that item is open."""

    def let_go(self) -> None:
        """Another machine is open: nothing that was written for the one before stays."""


class Sentences(Column):
    """Sentences one under the other, made anew only where they are others."""

    def __init__(self, book: Book, *, step: str = "text", ink: str = "ink") -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book, self._step, self._ink = book, step, ink
        self.told: list[str] = []

    def show_said(self, sentences: Iterable[Say]) -> None:
        """These are said."""
        self.show_words([self.book.say(sentence) for sentence in sentences])

    def show_words(self, told: list[str]) -> None:
        """These words are said."""
        if told == self.told:
            return
        self.told = told
        for text, words in zip(self._texts(len(told)), told, strict=True):
            text.say(words)
        self.setVisible(bool(told))

    def _texts(self, count: int) -> list[Text]:
        texts = [w for w in self.widgets() if isinstance(w, Text)]
        for text in texts[count:]:
            self.take(text)
            text.hide()
            text.deleteLater()
        while len(texts) < count:
            texts.append(Text(self.look, step=self._step, ink=self._ink))
            self.add(texts[-1], 1)
        return texts[:count]


def stack(column: Column, *entries: tuple[QWidget, float]) -> None:
    """Each widget stands at the end of the column, so many millimetres below the one before."""
    for widget, gap in entries:
        column.add(widget, gap)


def section(column: Column, title: str, *bodies: QWidget, aside: str = "") -> SectionHead:
    """A head and what belongs to it stand at the end of the column; gives the head."""
    head = SectionHead(column.look, title, aside=aside)
    column.add(head, 6)
    for body in bodies:
        column.add(body, 2)
    return head


def drawn(amount: Decimal) -> float:
    """An amount as a place on a chart."""
    return float(amount)
