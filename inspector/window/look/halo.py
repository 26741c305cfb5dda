"""A sign on a halo of paper, to be seen on a drawing."""

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPainter, QPixmap

from inspector.window.look.inks import Inks
from inspector.window.look.signs import paint_sign, sign_width

HALO = 0.17  # of paper round a sign, in diameters


def sign_on_halo(name: str, size: float, ratio: float, inks: Inks) -> QPixmap:
    """The sign, ``size`` pixels high, on a halo of paper 0.17 of that wide."""
    halo = HALO * size
    wide, high = sign_width(name, size) + 2 * halo, size + 2 * halo
    picture = QPixmap(QSizeF(wide * ratio + 1, high * ratio + 1).toSize())
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(inks.colour("paper"))
    centre = QPointF(picture.width(), picture.height()) / (2 * ratio)
    slip = 0.26 * size if name == "fail" else 0.0
    for side in (-slip, slip):
        painter.drawEllipse(centre + QPointF(side, 0), high / 2, high / 2)
    box = QRectF(centre.x() - wide / 2, centre.y() - size / 2, wide, size)
    paint_sign(painter, box, name, inks)
    painter.end()
    return picture
