"""The outline drawing with a sign at the spot of each item."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from reportlab.lib.colors import HexColor

from inspector.sheet.draw.kit import INK, LINE, MM, PAPER, SEMIBOLD, SMALL, Piece, width_of
from inspector.sheet.draw.signs import draw_sign

if TYPE_CHECKING:
    from inspector.sheet.blocks import Spot
    from inspector.sheet.draw.svg import Outline, Shape

FULL = 4.2 * MM
SHARE = {"fail": 1.15, "doubt": 1.0}
OTHERS = 0.82
RANK = {"pass": 1, "doubt": 2, "fail": 3}
INKS = {"#1B2230": LINE, "#FBFAF6": PAPER}
UNDER_SIGNS = 6.5 / 7.5  # how much thinner the lines are where signs lie on them
CAPS = {"butt": 0, "round": 1, "square": 2}
JOINS = {"miter": 0, "round": 1, "bevel": 2}


class Machine(Piece):
    """The drawing across the column, signs on it, findings numbered; a touch on a number goes to its finding."""

    def __init__(self, outline: Outline, spots: tuple[Spot, ...]) -> None:
        super().__init__()
        self.outline = outline
        self.spots = sorted(spots, key=lambda spot: RANK.get(spot.sign, 0))

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width, the height in proportion but never past two fifths of a page."""
        _, _, wide, high = self.outline.box
        self.scale = min(width / wide, 110 * MM / high)
        self.width, self.height = width, high * self.scale
        return self.width, self.height

    def draw(self) -> None:
        """The lines, then the signs, what needs a look on top."""
        canvas, (left, top, _, _) = self.canv, self.outline.box
        canvas.saveState()
        canvas.translate(0, self.height)
        canvas.scale(self.scale, -self.scale)
        canvas.translate(-left, -top)
        for shape in self.outline.shapes:
            _draw_shape(canvas, shape)
        canvas.restoreState()
        for spot in self.spots:
            draw_sign(canvas, spot.sign, *self._at(spot), _across(spot), halo=True)
        for spot in self.spots:
            if spot.number is not None:
                self._number(spot.number, _across(spot), *self._at(spot))

    def _at(self, spot: Spot) -> tuple[float, float]:
        """Where the spot lies, held inside the drawing."""
        left, top, wide, high = self.outline.box
        x = min(max((spot.x - left) * self.scale, 0), wide * self.scale)
        y = min(max((top + high - spot.y) * self.scale, 0), self.height)
        return x, y

    def _number(self, number: int, d: float, x: float, y: float) -> None:
        canvas, said = self.canv, str(number)
        wide, up = width_of(said, SMALL, bold=True), y + d / 2 + 1.6 * MM
        canvas.setFillColor(PAPER)
        canvas.circle(x, up + 0.33 * SMALL, max(wide, SMALL * 0.6) * 0.5 + 0.8 * MM, stroke=0, fill=1)
        canvas.setFillColor(INK)
        canvas.setFont(SEMIBOLD, SMALL)
        canvas.drawString(x - wide / 2, up, said)
        reach = (x - 3 * MM, y - 3 * MM, x + 3 * MM, up + SMALL)
        canvas.linkRect("", f"finding-{number}", reach, relative=1, Border="[0 0 0]")


def _across(spot: Spot) -> float:
    return FULL * SHARE.get(spot.sign, OTHERS)


def _ink(value: str) -> Any:
    """The colour of an attribute, recoloured for the sheet; None for none."""
    if value == "none":
        return None
    if value.upper() in INKS:
        return INKS[value.upper()]
    try:
        return HexColor(value)
    except ValueError:
        return LINE


def _length(value: str | None, default: float) -> float:
    try:
        return float(value) if value is not None else default
    except ValueError:
        return default


def _draw_shape(canvas: Any, shape: Shape) -> None:
    ink = shape.ink
    fill, stroke = _ink(ink.get("fill", "none")), _ink(ink.get("stroke", "#1B2230"))
    path = canvas.beginPath()
    for command, points in shape.strokes:
        flat = [number for point in points for number in point]
        {"M": path.moveTo, "L": path.lineTo, "C": path.curveTo, "Z": path.close}[command](*flat)
    if fill is not None:
        canvas.setFillColor(fill)
    if stroke is not None:
        canvas.setStrokeColor(stroke)
    canvas.setLineWidth(_length(ink.get("stroke-width"), 7.5) * UNDER_SIGNS)
    canvas.setLineCap(CAPS.get(ink.get("stroke-linecap", ""), 0))
    canvas.setLineJoin(JOINS.get(ink.get("stroke-linejoin", ""), 0))
    canvas.drawPath(path, stroke=int(stroke is not None), fill=int(fill is not None))
