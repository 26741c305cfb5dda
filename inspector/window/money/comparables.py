"""Comparables: what other machines fetched, entered one by one or as a table, and none lost that was left out."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal

from inspector.judgement.reckoned import GridRow
from inspector.record.csv_in import CsvRead, read_comparables
from inspector.record.verbs_money import add_comparables, comparable, new_comparable_id
from inspector.texts import tr, trn
from inspector.window.look.columns import Column
from inspector.window.look.fields import TextField
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.scroll import top_in_area
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book
from inspector.window.money.comparing import CompareForm
from inspector.window.money.dealing import comparable_name
from inspector.window.money.fitting import FitPart
from inspector.window.money.view import Sentences, View
from inspector.window.money.written import when

EDGE = 2.6  # before the words of a row, beside the bar of the open one, in millimetres
LARGEST = 2_000_000  # bytes of a table that is read


class ComparablesView(View):
    """The list at the left, the open one at the right; a table is pasted, dropped or written."""

    def __init__(self, book: Book) -> None:
        super().__init__(book)
        self.list, self.table = CompareList(book), TablePart(book)
        self.form, self.fit = CompareForm(book), FitPart(book)
        left, right = Column(self.look), Column(self.look)
        for widget, gap in ((self.list, 0), (self.table, 6)):
            left.add(widget, gap)
        right.add(self.form)
        right.add(self.fit, 6)
        self.columns = self.stand([(left, 0), (right, 0)])
        self.open_id = ""
        self.list.chosen.connect(self.open)
        self.list.add_one.clicked.connect(self.add_one)
        self.form.gone.connect(partial(self.open, ""))

    def open(self, key: str) -> None:
        """That comparable stands in the fields."""
        self.form.let_go()
        self.open_id = key
        self.show_money()
        if key and self.columns.narrow and self.isVisible() and (found := top_in_area(self.form)):
            area, top = found
            area.verticalScrollBar().setValue(top)

    def add_one(self) -> None:
        """A new comparable, to be written over, is open."""
        from inspector.record.words import PriceKind

        key = new_comparable_id(self.book.record)
        made = comparable(id=key, kind=PriceKind.SOLD, price="0", currency=self.book.code)
        self.list.say(self.book.do(lambda: add_comparables([made])))
        self.open(key)

    def let_go(self) -> None:
        """Nothing written for the machine before stays."""
        self.open_id = ""
        self.form.let_go()
        self.table.clear_all()

    def show_money(self) -> None:
        """List and fields as the record stands."""
        worth = self.book.worth
        order = {c.id: n for n, c in enumerate(self.book.record.comparables)}
        rows = sorted((*worth.rows, *worth.left_out), key=lambda row: order[row.id])
        if self.open_id not in order:
            self.open_id = next(iter(order), "")
        self.list.show_rows(rows, self.open_id)
        self.form.show_one(next((row for row in rows if row.id == self.open_id), None))
        self.fit.show_fit(worth)


class CompareList(Column):
    """One row a comparable, counted or not, with the reason; ``chosen(id)`` tells of a touch."""

    chosen = Signal(str)

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book = book
        self.head = SectionHead(self.look, tr("Comparables"))
        self.body = Column(self.look, edge=0, top=0)
        self.none = Text(self.look, tr("None is entered. Enter what other machines were sold, bid or asked for."))
        self.trouble = Text(self.look, semibold=True)
        self.add_one = Key(self.look, tr("enter one"))
        self.rows: dict[str, Row] = {}
        for widget, gap in ((self.head, 0), (self.none, 2), (self.body, 0), (self.trouble, 2), (self.add_one, 3)):
            self.add(widget, gap)
        self.say("")

    def say(self, sentence: str) -> None:
        """What could not be done."""
        self.trouble.say(sentence)
        self.trouble.setVisible(bool(sentence))

    def show_rows(self, rows: Sequence[GridRow], current: str) -> None:
        """These comparables, the open one marked."""
        counted = sum(row.counted for row in rows)
        self.head.say(tr("Comparables"), tr("{n} of {all} counted", n=counted, all=len(rows)) if rows else "")
        self.none.setVisible(not rows)
        if list(self.rows) != [row.id for row in rows]:
            self.body.clear()
            self.rows = {row.id: Row(self.look, strong=True, edge=EDGE) for row in rows}
            for key, made in self.rows.items():
                made.clicked.connect(partial(self._choose, key))
                self.body.add(made, 0)
        for row in rows:
            made = self.rows[row.id]
            made.say(comparable_name(row.kind, row.title, row.place, row.source), second=self._second(row),
                     aside=self._aside(row))  # fmt: skip
            made.set_current(row.id == current)

    def _aside(self, row: GridRow) -> str:
        return tr("no rate") if row.as_it_stands is None else self.book.amounts.whole(row.as_it_stands)

    def _second(self, row: GridRow) -> str:
        book = self.book
        told = [row.title] if row.title and row.place else []
        told.append(when(row.date) if row.date else tr("no date"))
        told.append(tr("entered {amount} {currency}", amount=book.told(row.as_entered), currency=row.currency))
        if row.why_not is not None:
            told.append(book.say(row.why_not))
        elif row.note is not None:
            told.append(book.say(row.note))
        return " · ".join(told)

    def _choose(self, key: str, _: bool = False) -> None:
        self.chosen.emit(key)


class TablePart(Column):
    """A table of comparables: lines that can be taken are entered, the others stay here, each with its fault."""

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book = book
        self.text = TextField(
            self.look, tr("A table: paste, drop or write it here"), lines=4,
            hint=tr("kind, price, currency, date, place, fees, condition, numbers, score, like, title, source, "
                    "picture"),
        )  # fmt: skip
        self.take_key, self.clear_key = Key(self.look, tr("enter these lines")), Key(self.look, tr("empty the table"))
        self.done = Text(self.look, semibold=True)
        self.errors, self.notes = Sentences(book), Sentences(book, step="small", ink="soft")
        self.say("")
        for widget, gap in ((SectionHead(self.look, tr("Many at once")), 0), (self.done, 2), (self.errors, 2),
                            (self.notes, 1), (self.text, 3),
                            (KeyRow(self.look, [self.take_key, self.clear_key]), 2)):  # fmt: skip
            self.add(widget, gap)
        self.take_key.clicked.connect(lambda: self.enter(self.text.value()))
        self.clear_key.clicked.connect(self.clear_all)

    def say(self, sentence: str) -> None:
        """What was entered, or why nothing was."""
        self.done.say(sentence)
        self.done.setVisible(bool(sentence))

    def clear_all(self) -> None:
        """The table is empty, and nothing is said of one."""
        self.text.edit.setPlainText("")
        self.text.commit()
        self.say("")
        self.errors.show_words([])
        self.notes.show_words([])

    def enter(self, text: str) -> CsvRead:
        """Lines that can be taken are entered as one step; what cannot stays in the table."""
        taken = {c.id for c in self.book.record.comparables}
        read = read_comparables(text, taken=taken, today=self.book.desk.clock()[:10])
        # A price without a currency is in the one told today, also where another is told tomorrow.
        told = {"currency": self.book.code}
        rows = [row if row.currency else row.model_copy(update=told) for row in read.rows]
        trouble = self.book.do(lambda: add_comparables(rows)) if rows else ""
        self.errors.show_said(error.sentence for error in read.errors)
        self.notes.show_said(read.notes)
        if trouble:
            self.say(trouble)
            left = text
        else:
            entered = trn("{count} comparable entered.", "{count} comparables entered.", len(read.rows))
            if read.errors:
                lines = trn("{count} line was not taken:", "{count} lines were not taken:", len(read.errors))
                entered = f"{entered} {lines}"
            self.say(entered)
            left = _left(text, read)
        if self.text.value() != left:
            self.text.edit.setPlainText(left)
            self.text.commit()
        return read

    def enter_file(self, path: Path) -> None:
        """The table in that file is entered."""
        try:
            if path.stat().st_size > LARGEST:
                self.say(tr("{name} is too large for a table of prices.", name=path.name))
                return
            text = path.read_bytes().decode("utf-8-sig")
        except UnicodeDecodeError:
            self.say(tr("{name} is not in UTF-8. Save it so, or copy its lines and paste them.", name=path.name))
        except OSError as error:
            self.say(tr("{name} cannot be read: {why}.", name=path.name, why=error.strerror))
        else:
            self.enter(text)


def _left(text: str, read: CsvRead) -> str:
    """The headings and the lines that were not taken, to be mended and entered again."""
    if not read.errors:
        return ""
    if not read.rows:
        return text
    first = next((line for line in text.splitlines() if line.strip()), "")
    lines = [error.text for error in read.errors]
    return "\n".join([first, *lines] if first not in lines and not _guessed(read) else lines)


def _guessed(read: CsvRead) -> bool:
    """Whether the table had no headings."""
    from inspector.record.csv_columns import GUESSED

    return any(note.template == GUESSED.template for note in read.notes)
