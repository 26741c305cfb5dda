"""A look of 4.7 pixels to the millimetre, and pictures of widgets to compare."""

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QWidget

from inspector.window.look import SCHEMES, Look

PX_PER_MM = 4.7
SCALES = (1.0, 1.3, 1.75)


@pytest.fixture
def look(qapp):
    """The light look in plain size, whatever screen there is."""
    made = Look("light", 1.0, PX_PER_MM)
    made.dress(qapp)
    yield made
    made.changed.disconnect(made._dress)


@pytest.fixture(params=SCHEMES)
def scheme(request):
    return request.param


@pytest.fixture
def stage(qtbot):
    """Shows a widget in a window of this size, given back when it is there."""

    shown = []

    def show(widget: QWidget, width: int, height: int) -> QWidget:
        shown.append(widget)
        qtbot.addWidget(widget)
        widget.resize(width, height)
        with qtbot.waitExposed(widget):
            widget.show()
        widget.activateWindow()
        return widget

    yield show
    shown.clear()


def picture(widget: QWidget) -> QImage:
    """What the widget looks like now."""
    return widget.grab().toImage().convertToFormat(QImage.Format.Format_RGB32)


def grey(image: QImage) -> list[int]:
    """The picture as a grey copy shows it, one byte a pixel."""
    plain = image.convertToFormat(QImage.Format.Format_Grayscale8)
    data, line = bytes(plain.constBits()), plain.bytesPerLine()
    rows = range(plain.height())
    return [value for y in rows for value in data[y * line : y * line + plain.width()]]


def apart(one: QImage, other: QImage, least: int = 40) -> float:
    """The share of pixels whose grey differs by at least this much of 255."""
    pairs = list(zip(grey(one), grey(other), strict=True))
    return sum(abs(a - b) >= least for a, b in pairs) / len(pairs)
