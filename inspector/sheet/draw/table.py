"""A station of a walk sheet as a table: one ruled line an item, the line broken where mark and word are written."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.kit import HEAD, LINE, MM, RULE, SMALL, TEXT, WIDE, Gap, Piece, para
from inspector.sheet.draw.setting import Running, stack
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.sheet.blocks import TableBlock, TableItem

NUMBER, NAME, TOLD, MARK = 8 * MM, 47 * MM, 121 * MM, 133 * MM  # where each column ends, from the left edge
BETWEEN = 2 * MM
LEAST = 7 * MM  # room for a word by hand


def table(block: TableBlock, key: str) -> Iterator[Any]:
    """The heading with the names of the columns, what is said first, and the items; headed again on a new page."""
    heading = _heading(block.title, block.heads)
    heading.mark = Mark(key, block.title)
    more = tr("{title}, continued", title=block.title)
    running = Running(block.title, again=lambda: _heading(more, block.heads, TEXT))
    running.head = True
    begin: list[Any] = [Gap(1.5), heading, running]
    if block.first:
        said = Beside([], [para(block.first, SMALL, bold=True, tight=True)], at=0, gap=0, below=0.8 * MM)
        said.head = True
        begin.append(said)
    first, *others = (_line(item) for item in block.items)
    yield stack([*begin, first])
    yield from others
    yield Running()


def _columns(name: list[Any], told: list[Any], mark: list[Any], word: list[Any]) -> Beside:
    """Four columns in the places that every line of the table shares."""
    last = Beside(mark, word, at=MARK - TOLD + BETWEEN, gap=BETWEEN)
    left = Beside(name, told, at=NAME, gap=BETWEEN)
    return Beside([left], [last], at=TOLD + BETWEEN, gap=BETWEEN)


def _heading(title: str, heads: tuple[str, str, str], size: float = HEAD) -> Beside:
    said = [[Gap(1.7 if size == HEAD else 0.5), para(head, SMALL, soft=True)] for head in heads]
    columns = _columns([para(title, size if len(title) < 30 else TEXT, bold=True)], *said)
    heading = Beside([], [columns, Feet(whole=True)], at=0, gap=0, below=0.6 * MM)
    heading.head = True
    return heading


def _line(item: TableItem) -> Beside:
    number = para(f"{'•' if item.first else ''} {item.number}", SMALL, bold=True, right=True, tight=True)
    name = Beside([number], [para(item.name, SMALL, bold=True, tight=True)], at=NUMBER, gap=BETWEEN)
    told: list[Any] = [Beside([name], [para(item.expected, SMALL, tight=True)], at=NAME, gap=BETWEEN)]
    if item.caution:
        told.append(Beside([], [para(item.caution, SMALL, soft=True, tight=True)], at=NUMBER, gap=0))
    columns = Beside(told, [Piece(0, LEAST)], at=TOLD + BETWEEN, gap=BETWEEN, above=0.4 * MM, below=0.6 * MM)
    return Beside([], [columns, Feet()], at=0, gap=0, whole=True)


class Feet(Piece):
    """The foot of a line: a hairline under what is printed, a line of ink under each place to write."""

    def __init__(self, *, whole: bool = False) -> None:
        super().__init__()
        self.ruled = whole

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width and no height."""
        self.width = width
        return width, 0

    def draw(self) -> None:
        """The lines, broken between the places."""
        canvas, word = self.canv, MARK + 2 * BETWEEN
        canvas.setLineWidth(0.5)
        canvas.setStrokeColor(LINE if self.ruled else RULE)
        canvas.line(0, 0, self.width if self.ruled else TOLD, 0)
        if not self.ruled:
            canvas.setStrokeColor(LINE)
            canvas.line(TOLD + BETWEEN, 0, MARK + BETWEEN, 0)
            canvas.line(word, 0, WIDE, 0)
