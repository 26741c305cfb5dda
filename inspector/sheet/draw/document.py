"""The pages: paper, head, foot, page numbers, contents, and what the file says about itself."""

from __future__ import annotations

from copy import copy
from datetime import datetime
from io import BytesIO
from typing import TYPE_CHECKING, Any, NamedTuple

from reportlab import rl_config
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

from inspector.sheet.draw.kit import INK, MM, REGULAR, RULE, SMALL, WIDE, Gap, clean, fonts, is_counting, para
from inspector.sheet.draw.parts import story
from inspector.sheet.draw.setting import Running
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.sheet.blocks import Sheet

PAPERS = {"A4": A4, "Letter": LETTER}
MARGIN = 18 * MM
HEAD_LINE = 19.5 * MM  # from the top edge
TEXT_TOP = 23.5 * MM  # from the top edge
FOOT_LINE = 23.6 * MM  # from the bottom edge
TEXT_FOOT = 26.5 * MM  # from the bottom edge


def drawn(sheet: Sheet, paper: str) -> bytes:
    """The sheet as PDF; drawn once to count its pages and once with them. Raises ValueError for an unknown paper."""
    if paper not in PAPERS:
        raise ValueError(f"there is no paper {paper!r}; choose one of {', '.join(PAPERS)}")
    fonts()
    rl_config.useA85 = 0  # else every picture grows by a quarter
    pieces = [*story(sheet), Gap(0)]  # broken into lines while pages are counted, and not again
    counted = _build(sheet, pieces, PAPERS[paper], 0, {})
    return _build(sheet, pieces, PAPERS[paper], counted.page, counted.places).bytes


class _Built(NamedTuple):
    """How many pages there are, on which of them each part begins, and the file."""

    page: int
    places: dict[str, int]
    bytes: bytes


def _build(
    sheet: Sheet, pieces: list[Any], size: tuple[float, float], pages: int, places: dict[str, int]
) -> _Built:  # fmt: skip
    buffer = BytesIO()
    document = _Document(buffer, sheet, size, pages, places)
    # A piece that was put off to the next page carries a sign of it, and would be refused when pages are built again.
    document.build([copy(piece) for piece in pieces], canvasmaker=document.canvas)
    return _Built(document.page, document.places, buffer.getvalue())


class _Document(BaseDocTemplate):  # type: ignore[misc]
    """A document of one kind of page, that heads a page again where a part goes on."""

    def __init__(
        self, buffer: BytesIO, sheet: Sheet, size: tuple[float, float], pages: int, places: dict[str, int]
    ) -> None:
        self.sheet, self.pages, self.places = sheet, pages, places
        super().__init__(
            buffer, pagesize=size, title=_plain(f"{sheet.machine}: {sheet.title}"),
            author=_plain(sheet.author) or tr("not named"), subject=_plain("; ".join(sheet.stamp)),
            creator="inspector", lang=tr("en"), displayDocTitle=True, invariant=1, pageCompression=1,
            initialFontName=REGULAR, initialFontSize=SMALL,
        )  # fmt: skip
        frame = Frame(
            MARGIN, TEXT_FOOT, WIDE, size[1] - TEXT_TOP - TEXT_FOOT,
            leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0,
        )  # fmt: skip
        self.addPageTemplates(PageTemplate("page", [frame], onPage=_furniture))

    def canvas(self, *args: Any, **named: Any) -> Canvas:
        """A canvas that knows whether pages are only counted, and when the sheet was made."""
        canvas = Canvas(*args, **named)
        canvas.counting, canvas.running, canvas.places = not self.pages, Running(), self.places
        canvas.text_top = self.pagesize[1] - TEXT_TOP
        _date(canvas, self.sheet.made_at)
        return canvas

    def handle_frameBegin(self, *args: Any, **named: Any) -> None:  # noqa: N802
        """A part that goes on from the page before is headed again."""
        super().handle_frameBegin(*args, **named)
        heading = self.canv.running.heading()
        if heading is not None:
            self._hanging.append(heading)


def _plain(text: str) -> str:
    return " ".join(clean(text).split())


def _date(canvas: Canvas, made_at: str) -> None:
    """The file says that it was made when the sheet was."""
    try:
        at = datetime.fromisoformat(made_at)
    except ValueError:
        return
    stamp, offset = canvas._doc._timeStamp, at.utcoffset()
    minutes = int(offset.total_seconds() // 60) if offset else 0
    stamp.YMDhms = (at.year, at.month, at.day, at.hour, at.minute, at.second)
    stamp.dhh, stamp.dmm = int(minutes / 60), abs(minutes) % 60


def _furniture(canvas: Canvas, document: _Document) -> None:
    """Head and foot of a page, outside the frame of the text."""
    if is_counting(canvas):
        return
    sheet, (_, high) = document.sheet, document.pagesize
    canvas.saveState()
    page = tr("page {page} of {pages}", page=document.page, pages=document.pages)
    above, size = high - HEAD_LINE + 2 * MM, SMALL + 0.5
    _at(canvas, para(sheet.title, size, bold=True), MARGIN, above, 120 * MM)
    _at(canvas, para(page, size, right=True, soft=True), MARGIN + WIDE - 50 * MM, above, 50 * MM)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(2.1)
    canvas.line(MARGIN, high - HEAD_LINE, MARGIN + WIDE, high - HEAD_LINE)
    canvas.setStrokeColor(RULE)
    canvas.setLineWidth(0.5)
    canvas.line(MARGIN, FOOT_LINE, MARGIN + WIDE, FOOT_LINE)
    _under(canvas, para(sheet.foot, SMALL, soft=True), MARGIN, 108 * MM)
    size = SMALL if max(map(len, sheet.stamp)) < 100 else SMALL * 0.75  # an id may be 120 wide letters
    stamp = para("\n".join(sheet.stamp), size, soft=True, right=True)
    _under(canvas, stamp, MARGIN + 112 * MM, WIDE - 112 * MM)
    canvas.restoreState()


def _at(canvas: Canvas, paragraph: Any, x: float, y: float, width: float) -> None:
    paragraph.wrapOn(canvas, width, 1e6)
    paragraph.drawOn(canvas, x, y)


def _under(canvas: Canvas, paragraph: Any, x: float, width: float) -> None:
    high = paragraph.wrapOn(canvas, width, 1e6)[1]
    paragraph.drawOn(canvas, x, FOOT_LINE - 1.6 * MM - high)
