"""The signs as shapes: three marks, five ways of having seen or not seen, and the grade of a source."""

from __future__ import annotations

from math import acos, cos, degrees, pi, sin
from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.kit import INK, LINE, MM, PAPER, SIGN_INKS, SOFT, Piece

if TYPE_CHECKING:
    from collections.abc import Callable

CLEAR = 0.13  # width of the clear line, in diameters
STROKE = 0.085  # width of an outline, in diameters
SLIP = 0.26  # how far each half of a fail slips sideways, in diameters
GAP = 0.04  # what is left open between the halves of a fail, in diameters
HALO = 0.17  # of paper round a sign on a drawing, in diameters


def _side(canvas: Any, d: float, sx: int, sy: int, *, half: bool) -> None:
    """One side of the clear line filled: a quarter of the round, or both quarters where ``half`` is not set."""
    r, c = d / 2, CLEAR * d / 2
    turn = degrees(acos(c / r))
    path = canvas.beginPath()
    if half:
        path.moveTo(c, 0)
        path.lineTo(r, 0)
        path.arcTo(-r, -r, r, r, 0, turn)
    else:
        path.moveTo(c, -(r * r - c * c) ** 0.5)
        path.arcTo(-r, -r, r, r, -turn, 2 * turn)
    path.close()
    canvas.saveState()
    canvas.scale(sx, sy)
    canvas.drawPath(path, stroke=0, fill=1)
    canvas.restoreState()


def _pass(canvas: Any, d: float) -> None:
    for sx in (1, -1):
        _side(canvas, d, sx, 1, half=False)


def _doubt(canvas: Any, d: float) -> None:
    for sx in (1, -1):
        _side(canvas, d, sx, 1, half=True)
    w = STROKE * d
    canvas.setLineWidth(w)
    r, reach = d / 2 - w / 2, 0.54 * d
    canvas.arc(-r, -r, r, r, 180, 180)
    canvas.rect(-reach, -w / 2, 2 * reach, w, stroke=0, fill=1)


def _fail(canvas: Any, d: float) -> None:
    for up in (1, -1):
        canvas.saveState()
        canvas.translate(-up * SLIP * d, up * GAP * d / 2)
        for sx in (1, -1):
            _side(canvas, d, sx, up, half=True)
        canvas.restoreState()


def _ring(canvas: Any, d: float) -> None:
    canvas.setLineWidth(STROKE * d)
    canvas.circle(0, 0, d / 2 - STROKE * d / 2, stroke=1, fill=0)


def _examined(canvas: Any, d: float) -> None:
    _ring(canvas, d)
    canvas.circle(0, 0, 0.135 * d, stroke=0, fill=1)


def _dots(canvas: Any, d: float) -> None:
    size = 0.07 * d
    for n in range(8):
        turn, reach = (n + 0.5) * pi / 4, d / 2 - size
        canvas.circle(reach * cos(turn), reach * sin(turn), size, stroke=0, fill=1)


def _hatched(canvas: Any, d: float) -> None:
    canvas.saveState()
    inside = canvas.beginPath()
    inside.circle(0, 0, d / 2 - STROKE * d)
    canvas.clipPath(inside, stroke=0, fill=0)
    canvas.setLineWidth(0.06 * d)
    for n in range(-3, 4):
        canvas.line(-d + n * 0.24 * d, -d, d + n * 0.24 * d, d)
    canvas.restoreState()
    _ring(canvas, d)


def _crossed(canvas: Any, d: float) -> None:
    canvas.setLineWidth(STROKE * d)
    for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        canvas.line(x * 0.21 * d, y * 0.21 * d, x * 0.5 * d, y * 0.5 * d)


ROUNDS: dict[str, Callable[[Any, float], None]] = {
    "pass": _pass,
    "doubt": _doubt,
    "fail": _fail,
    "examined": _examined,
    "not checked": _dots,
    "not seen": _ring,
    "cannot be seen": _hatched,
    "not fitted to this version": _crossed,
}


def draw_sign(canvas: Any, sign: str, x: float, y: float, d: float, *, halo: bool = False) -> None:
    """The sign of this diameter stands with its middle at x, y, on paper of its own where ``halo`` is set."""
    canvas.saveState()
    canvas.translate(x, y)
    canvas.setLineCap(0)
    if halo:
        canvas.setFillColor(PAPER)
        for off in (-SLIP * d, SLIP * d) if sign == "fail" else (0.0,):
            canvas.circle(off, 0, d * (0.5 + HALO), stroke=0, fill=1)
    ink = SIGN_INKS.get(sign, SOFT)
    canvas.setFillColor(ink)
    canvas.setStrokeColor(ink)
    ROUNDS.get(sign, _ring)(canvas, d)
    canvas.restoreState()


def sign_width(sign: str, d: float) -> float:
    """How wide the sign is."""
    return d * (1.0 + 2 * SLIP if sign == "fail" else 1.08 if sign == "doubt" else 1.0)


class Sign(Piece):
    """A sign alone, its diameter in points, mid in a line of this height and ``width`` if wider."""

    def __init__(self, sign: str, d: float, height: float, width: float = 0) -> None:
        super().__init__(max(width, sign_width(sign, d)), height)
        self.sign, self.d = sign, d

    def draw(self) -> None:
        """The sign in the middle of its room."""
        draw_sign(self.canv, self.sign, self.width / 2, self.height / 2, self.d)


class Grade(Piece):
    """Three strokes, as many filled as the grade."""

    STEP, WIDE, HIGH = 1.45 * MM, 0.75 * MM, 2.6 * MM

    def __init__(self, grade: int, height: float) -> None:
        super().__init__(3 * self.STEP, height)
        self.grade = grade

    def draw(self) -> None:
        """Filled strokes in ink, the others outlined."""
        canvas, foot = self.canv, (self.height - self.HIGH) / 2 - 0.4
        for n in range(3):
            filled = n < self.grade
            canvas.setFillColor(INK)
            canvas.setStrokeColor(LINE)
            canvas.setLineWidth(0.5)
            inset = 0 if filled else 0.25
            canvas.rect(
                n * self.STEP + inset, foot + inset, self.WIDE - 2 * inset, self.HIGH - 2 * inset,
                stroke=0 if filled else 1, fill=1 if filled else 0,
            )  # fmt: skip
