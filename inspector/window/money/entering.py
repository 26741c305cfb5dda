"""Fields of Money: kept as soon as they are left; what cannot be kept stays, with a sentence below it."""

from collections.abc import Callable, Sequence
from decimal import Decimal

from inspector.record.edits import Step
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.fieldrow import FieldRow
from inspector.window.look.fields import ChoiceField, LineField
from inspector.window.look.keys import Option
from inspector.window.look.text import Text
from inspector.window.money.book import Book
from inspector.window.money.written import figure, write


class FigureField(LineField):
    """One figure; ``keep`` makes the step that keeps it, None for an empty field."""

    def __init__(
        self, book: Book, label: str, keep: Callable[[Decimal | None], Step], *, thousands: bool = True, hint: str = ""
    ) -> None:
        super().__init__(book.desk.look, label, hint=hint)
        self.book, self._keep, self._thousands = book, keep, thousands
        self.committed.connect(self._kept)

    def show_figure(self, value: Decimal | None) -> None:
        """The field holds this figure."""
        write(self, value, self.book.amounts, thousands=self._thousands)

    def _kept(self, text: str) -> None:
        # What is no amount is mostly a percentage, and written as one.
        plain = text if self._thousands else text.strip().removesuffix("%")
        self.say(self.book.do(lambda: self._keep(figure(plain, thousands=self._thousands))))


class WordField(LineField):
    """One line of words."""

    def __init__(self, book: Book, label: str, keep: Callable[[str], Step], *, hint: str = "") -> None:
        super().__init__(book.desk.look, label, hint=hint)
        self.committed.connect(lambda text: self.say(book.do(lambda: keep(text.strip()))))


class PickField(ChoiceField):
    """One word of a few."""

    def __init__(self, book: Book, label: str, options: Sequence[Option], keep: Callable[[str], Step]) -> None:
        super().__init__(book.desk.look, label, options)
        self.committed.connect(lambda word: self.say(book.do(lambda: keep(word))))


Cells = tuple[str, ...]


class Lines(Column):
    """Lines of a few fields each, and one empty line to go on with; a line emptied whole is taken away.

    ``keep(number, cells)`` makes the step for a line that is filled or emptied; lines count from 0.
    """

    def __init__(
        self, book: Book, title: str, labels: Cells, rows: Callable[[], list[Cells]],
        keep: Callable[[int, Cells], Step], needed: int = 0,
    ) -> None:  # fmt: skip
        super().__init__(book.desk.look, edge=0, top=0)
        self.book, self._labels, self._rows, self._keep = book, labels, rows, keep
        self._needed = needed or len(labels)
        self.fields: list[list[LineField]] = []
        self.add(Text(book.desk.look, title, semibold=True))
        self.note = Text(book.desk.look, step="small")
        self.add(self.note, 1)
        self.note.hide()

    def show_rows(self) -> None:
        """The lines are those of the record, and an empty one."""
        rows = [*self._rows(), ("",) * len(self._labels)]
        while len(self.fields) < len(rows):
            self._add_line()
        while len(self.fields) > len(rows):
            self._drop_line()
        for line, cells in zip(self.fields, rows, strict=True):
            for field, cell in zip(line, cells, strict=True):
                field.set_value(cell)

    def _add_line(self) -> None:
        number = len(self.fields)
        line = [LineField(self.look, label) for label in self._labels]
        for field in line:
            field.committed.connect(lambda _, number=number: self._kept(number))
        self.fields.append(line)
        self.insert(len(self.widgets()) - 1, FieldRow(self.look, line), 2)

    def _drop_line(self) -> None:
        self.fields.pop()
        row = self.widgets()[-2]  # the last is the note
        self.take(row)
        row.hide()
        row.deleteLater()

    def _kept(self, number: int) -> None:
        if number >= len(self.fields):
            return
        cells = tuple(field.value().strip() for field in self.fields[number])
        filled = sum(bool(cell) for cell in cells)
        if not filled and number >= len(self._rows()):
            self._tell("")
        elif filled > 0 and not all(cells[: self._needed]):
            lacking = [label for label, cell in zip(self._labels, cells, strict=True) if not cell]
            self._tell(tr("Still to be written in this line: {names}.", names=", ".join(lacking)))
        else:
            self._tell(self.book.do(lambda: self._keep(number, cells)))

    def _tell(self, sentence: str) -> None:
        self.note.say(sentence)
        self.note.setVisible(bool(sentence))
