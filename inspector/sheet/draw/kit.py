"""Millimetres, inks, the font and how text is set."""

from __future__ import annotations

import unicodedata
from functools import lru_cache
from html import escape
from typing import Any

from reportlab.lib.colors import HexColor
from reportlab.lib.enums import TA_LEFT, TA_RIGHT
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import Flowable, Paragraph

from inspector.resource import resource

MM = 72 / 25.4
WIDE = 174 * MM  # the text between the margins, the same on A4 and Letter
LABEL = 40 * MM
CONTENT = WIDE - LABEL

INK = HexColor("#14181F")
SOFT = HexColor("#3E434C")
LINE = HexColor("#6A675E")
RULE = HexColor("#D3CEC1")
TRAY = HexColor("#F0EDE4")
PAPER = HexColor("#FFFFFF")
SIGN_INKS = {"pass": HexColor("#1C4E8C"), "doubt": HexColor("#835000"), "fail": HexColor("#A3201B")}

REGULAR = "SourceSansPro-Regular"
SEMIBOLD = "SourceSansPro-Semibold"
SMALL, LISTED, TEXT, HEAD, BIG, NAME = 9.0, 9.5, 10.5, 13.5, 19.0, 26.0

LINES_AT_ONCE = 40

HIDDEN = frozenset(["Cf", "Mn", "Me"])


def fonts() -> None:
    """The two fonts that ship are known to the drawing library."""
    for name in (REGULAR, SEMIBOLD):
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, str(resource("fonts", name + ".ttf"))))


@lru_cache(maxsize=1)
def _glyphs() -> frozenset[int]:
    fonts()
    known = [set(pdfmetrics.getFont(name).face.charToGlyph) for name in (REGULAR, SEMIBOLD)]
    return frozenset(known[0] & known[1])


def clean(text: str) -> str:
    """The text in characters that the font can show; what it cannot show is named in square brackets."""
    plain = unicodedata.normalize("NFC", text.replace("\r\n", "\n").replace("\r", "\n").replace("\t", " "))
    return "".join(_shown(c) for c in plain)


@lru_cache(maxsize=4096)
def _shown(char: str) -> str:
    if char == "\n" or (ord(char) in _glyphs() and unicodedata.category(char) not in ("Cc", "Cf")):
        return char
    kind = unicodedata.category(char)
    if kind == "Zs":
        return " "
    if kind in ("Zl", "Zp"):
        return "\n"
    if kind in HIDDEN and char in "\u00ad\u200b\u200c\u200d\u2060\ufe0e\ufe0f\ufeff":
        return ""
    named = unicodedata.name(char, "").lower() if kind in ("So", "Sk", "Sm", "Sc", "Po", "No") else ""
    return f"[{named}]" if named else f"[U+{ord(char):04X}]"


@lru_cache(maxsize=64)
def style(
    size: float = TEXT, *, bold: bool = False, soft: bool = False, right: bool = False, tight: bool = False
) -> Any:
    """How a paragraph is set: size in points, ink or soft, from the left or the right, lines apart or close."""
    face = SEMIBOLD if bold else REGULAR
    apart = 1.15 if tight or size >= BIG else 1.17 if size == LISTED else 1.28
    return ParagraphStyle(
        f"{face} {size} {soft} {right} {tight}",
        fontName=face, bulletFontName=face, fontSize=size, leading=round(size * apart, 2),
        textColor=SOFT if soft else INK, alignment=TA_RIGHT if right else TA_LEFT,
        allowWidows=0, allowOrphans=0, splitLongWords=1,
    )  # fmt: skip


class Text(Paragraph):  # type: ignore[misc]
    """A paragraph that is broken into lines once for each width, however often it is measured."""

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The width and height it takes."""
        # Splitting throws the lines away where too few would stay on a page.
        if getattr(self, "broken_for", None) != width or not hasattr(self, "blPara"):
            self.broken_for, self.measured = width, super().wrap(width, height)
        wide, high = self.measured
        return float(wide), float(high)

    def drawOn(self, canvas: Any, x: float, y: float, _sW: float = 0) -> None:  # noqa: N802, N803
        """The words, with their lower left corner there; nothing while pages are only counted."""
        if not is_counting(canvas):
            super().drawOn(canvas, x, y, _sW)


def is_counting(canvas: Any) -> bool:
    """Whether the canvas only finds out how many pages there are: then nothing needs to be drawn on it."""
    return bool(getattr(canvas, "counting", False))


def marked_up(text: str) -> str:
    """The text as paragraph markup that shows it to the letter."""
    return escape(clean(text), quote=False).replace("\n", "<br/>")


def para(text: str, size: float = TEXT, **how: bool) -> Any:
    """A paragraph of this text, set as ``style`` tells."""
    return Text(marked_up(text), style(size, **how))


def rich(*parts: tuple[str, bool], size: float = TEXT) -> Any:
    """A paragraph of parts, each plain or strong, one space between them."""
    said = [
        f'<font name="{SEMIBOLD}">{marked_up(text)}</font>' if strong else marked_up(text)
        for text, strong in parts
        if text
    ]
    return Text(" ".join(said), style(size))


def flowing(strong: str, words: str, small: str = "", *, size: float = TEXT, tight: bool = False) -> list[Any]:
    """Words behind a strong beginning and before a soft end, in paragraphs short enough to be measured quickly."""
    lines = words.split("\n")
    first, *others = ("\n".join(lines[n : n + LINES_AT_ONCE]) for n in range(0, len(lines), LINES_AT_ONCE))
    said = [_markup(strong, SEMIBOLD), marked_up(first)], *([marked_up(other)] for other in others)
    said[-1].append(_markup(small, REGULAR, SOFT) if small else "")
    return [Text(" ".join(part for part in parts if part), style(size, tight=tight)) for parts in said]


def _markup(text: str, face: str, ink: Any = INK) -> str:
    shown = marked_up(text)
    return f'<font name="{face}" color="#{ink.hexval()[2:]}">{shown}</font>' if shown else ""


def width_of(text: str, size: float, *, bold: bool = False) -> float:
    """How wide the text is in points."""
    return float(pdfmetrics.stringWidth(text, SEMIBOLD if bold else REGULAR, size))


class Piece(Flowable):  # type: ignore[misc]
    """Something of known width and height that draws itself with its lower left corner at the origin."""

    head = False  # kept with what follows
    gap = False  # dropped at the top of a page

    def __init__(self, width: float = 0, height: float = 0) -> None:
        super().__init__()
        self.width, self.height = width, height

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The width and height it takes."""
        return self.width, self.height

    def drawOn(self, canvas: Any, x: float, y: float, _sW: float = 0) -> None:  # noqa: N802, N803
        """It is drawn with its lower left corner there; while pages are only counted it says where it is."""
        if is_counting(canvas):
            self.counted(canvas)
        else:
            super().drawOn(canvas, x, y, _sW)

    def counted(self, canvas: Any) -> None:
        """What must be known of it before anything is drawn; nothing of most pieces."""

    def draw(self) -> None:
        """Nothing is drawn."""


class Gap(Piece):
    """Clear space of this height in millimetres; none where it would be the first on a page."""

    gap = True

    def __init__(self, millimetres: float) -> None:
        super().__init__(0, millimetres * MM)

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """Its height, but at the top of a page."""
        frame = getattr(self, "_frame", None)
        return 0, 0 if frame is not None and frame._atTop else self.height
