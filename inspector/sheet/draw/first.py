"""The first page in short, the contents with the page of each part, and views of the machine."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.finding import single
from inspector.sheet.draw.kit import BIG, MM, SMALL, WIDE, Gap, Piece, para, width_of
from inspector.sheet.draw.setting import RULED, abreast
from inspector.sheet.draw.shapes import Band, Coverage

if TYPE_CHECKING:
    from inspector.sheet.figure_blocks import ContentsBlock, Fraction, StoryBlock, ViewsBlock

BETWEEN = 8 * MM
HALF = (WIDE - BETWEEN) / 2
COLUMNS, COLUMN_GAP = 3, 6 * MM
VIEW_WIDE, VIEW_HIGH = (WIDE - 4 * MM) / 2, 70 * MM


def story(block: StoryBlock, key: str) -> list[Any]:
    """The two halves side by side, each with its figure, its words and its bar."""
    halves = Beside(_half(block.seen), _half(block.right), at=HALF + BETWEEN, gap=BETWEEN)
    note: list[Any] = [para(block.note, SMALL, soft=True, tight=True)] if block.note else []
    return [Beside([], [halves, *note], at=0, gap=0, rule=RULED, above=2.4 * MM, below=2 * MM, whole=True,
                   mark=Mark(key, block.title))]  # fmt: skip


def _half(one: Fraction) -> list[Any]:
    figure = width_of(one.figure, BIG, bold=True) + 3 * MM
    much = Beside([para(one.figure, BIG, bold=True)], [Gap(1.6), para(one.words)], at=figure, gap=0)
    if one.low is None or one.high is None:
        bar: Piece = Coverage(one.value or 0)
    else:
        bar = Band(one.value, one.low, one.high, HALF)
    return [para(one.name, SMALL, soft=True, tight=True), much, Gap(0.8), bar, Gap(1)]


class Entry(Piece):
    """A title and the page on which it stands; a touch on it goes there."""

    def __init__(self, key: str, title: str) -> None:
        super().__init__()
        self.key, self.title = key, title

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width, as high as the title beside the page."""
        self.width = width
        self.said = para(self.title, SMALL, tight=True)
        self.height = self.said.wrapOn(self.canv, width - 9 * MM, 1e6)[1] + 0.5 * MM
        return width, self.height

    def draw(self) -> None:
        """The title at the left, the page at the right."""
        canvas = self.canv
        self.said.drawOn(canvas, 0, 0.5 * MM)
        page = para(str(canvas.places.get(self.key, "")), SMALL, right=True, soft=True, tight=True)
        high = page.wrapOn(canvas, 8 * MM, 1e6)[1]
        page.drawOn(canvas, self.width - 8 * MM, self.height - high)
        canvas.linkRect("", self.key, (0, 0, self.width, self.height), relative=1, Border="[0 0 0]")


def contents(block: ContentsBlock, key: str) -> list[Any]:
    """The titles in columns, read down one before the next."""
    entries = [Entry(f"part-{number}", title) for number, title in block.entries]
    high, wide = -(-len(entries) // COLUMNS), (WIDE + COLUMN_GAP) / COLUMNS
    columns: list[Any] = []
    for at in reversed(range(COLUMNS)):
        columns = [Beside(entries[at * high : (at + 1) * high], columns, at=wide, gap=COLUMN_GAP)]
    title = para(block.title, bold=True)
    title.head = True
    whole = Beside([], [title, Gap(0.8), *columns], at=0, gap=0, rule=RULED, above=2 * MM, below=3 * MM, whole=True,
                   short=WIDE, mark=Mark(key, block.title))  # fmt: skip
    return [whole]


def views(block: ViewsBlock, key: str) -> list[Any]:
    """The view's name, then its photographs two abreast; beside it where there is none, or where it is shown."""
    title = para(block.title, bold=True)
    if not block.pictures:
        return [Beside([title], [para(block.missing)], rule=RULED, above=1.4 * MM, below=1.4 * MM, whole=True,
                       mark=Mark(key, block.title))]  # fmt: skip
    title.head = True
    cells = [list(single(picture, VIEW_WIDE, VIEW_HIGH)) for picture in block.pictures]
    shown: list[Any] = [title, Gap(0.8), *abreast(cells, 2, WIDE, 4 * MM, 1.4 * MM)]
    if block.missing:
        shown.append(para(block.missing))
    return [Beside([], shown, at=0, gap=0, rule=RULED, above=2 * MM, below=1.6 * MM, whole=True,
                   mark=Mark(key, block.title))]  # fmt: skip
