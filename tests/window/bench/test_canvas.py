"""The picture on the bench by mouse, touch and keys."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QPointingDevice, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from inspector.window.bench.overlay import Overlay


@pytest.fixture
def device():
    return QTest.createTouchDevice()


def pinch(canvas, device, before, after):
    QTest.touchEvent(canvas, device).press(0, before[0], canvas).press(1, before[1], canvas).commit()
    QTest.touchEvent(canvas, device).move(0, before[0], canvas).move(1, before[1], canvas).commit()
    QTest.touchEvent(canvas, device).move(0, after[0], canvas).move(1, after[1], canvas).commit()
    QTest.touchEvent(canvas, device).release(0, after[0], canvas).release(1, after[1], canvas).commit()


def test_at_first_the_whole_picture_is_seen(pad):
    canvas = pad.canvas
    corner, far = canvas.to_screen((0, 0)), canvas.to_screen(canvas.copy.size)
    assert corner.x() >= -0.01
    assert corner.y() >= -0.01
    assert far.x() <= canvas.width() + 0.01
    assert far.y() <= canvas.height() + 0.01
    assert canvas.copy.size == (1600, 1200)


def test_the_wheel_zooms_under_the_pointer(pad):
    canvas, spot = pad.canvas, QPointF(200, 150)
    before, scale = canvas.to_picture(spot), canvas.scale
    event = QWheelEvent(
        spot, canvas.mapToGlobal(spot), QPoint(), QPoint(0, 240), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(canvas, event)
    assert canvas.scale == pytest.approx(scale * 1.25**2)
    assert canvas.to_picture(spot) == pytest.approx(before, abs=0.01)


def test_two_fingers_zoom_and_move_and_leave_nothing_drawn(pad, device):
    canvas = pad.canvas
    middle = QPoint(300, 250)
    before = canvas.to_picture(QPointF(middle))
    pinch(canvas, device, (QPoint(250, 250), QPoint(350, 250)), (QPoint(200, 250), QPoint(400, 250)))
    assert canvas.sight.zoom == pytest.approx(2.0, rel=0.01)
    assert canvas.to_picture(QPointF(middle)) == pytest.approx(before, abs=1)


def test_a_pinch_while_drawing_draws_nothing(pad, device):
    pad.way("mark")
    pinch(pad.canvas, device, (QPoint(250, 250), QPoint(350, 250)), (QPoint(200, 250), QPoint(400, 250)))
    assert pad.photograph.marks == ()
    assert pad.canvas.sight.zoom > 1.5


def test_one_finger_pulls_the_picture(pad, device):
    canvas = pad.canvas
    canvas.zoom(3)
    before = canvas.to_screen((800, 600))
    QTest.touchEvent(canvas, device).press(0, QPoint(300, 200), canvas).commit()
    QTest.touchEvent(canvas, device).move(0, QPoint(320, 215), canvas).commit()
    QTest.touchEvent(canvas, device).move(0, QPoint(340, 230), canvas).commit()
    QTest.touchEvent(canvas, device).release(0, QPoint(340, 230), canvas).commit()
    moved = canvas.to_screen((800, 600)) - before
    assert (moved.x(), moved.y()) == pytest.approx((40, 30), abs=21)
    assert moved.x() > 15


def test_keys_zoom_and_move(pad):
    canvas, keys = pad.canvas, QTest
    canvas.setFocus()
    keys.keyClicks(canvas, "++")
    assert canvas.sight.zoom == pytest.approx(2.25)
    before = canvas.to_screen((800, 600)).x()
    keys.keyClick(canvas, Qt.Key.Key_Right)
    assert canvas.to_screen((800, 600)).x() < before
    keys.keyClicks(canvas, "1")
    assert canvas.scale == pytest.approx(1.0)
    keys.keyClicks(canvas, "0")
    assert canvas.sight.zoom == 1


def test_a_turned_picture_fits_and_keeps_its_points(pad):
    canvas = pad.canvas
    canvas.turn(90)
    assert canvas.to_screen((0, 0)).x() > canvas.to_screen((0, 1200)).x()
    for point in ((0, 0), (1600, 1200), (400, 900)):
        assert canvas.to_picture(canvas.to_screen(point)) == pytest.approx(point, abs=1e-6)
    assert canvas.to_screen((1600, 1200)).y() <= canvas.height() + 0.01


def test_a_pulled_handle_follows_without_jumping_to_the_finger(pad, qtbot):
    class One(Overlay):
        at, done = (800.0, 600.0), 0

        def handles(self):
            return [self.at]

        def move(self, index, point, *, done):
            self.at = point
            self.done += done

    canvas = pad.canvas
    one = One(canvas)
    canvas.lay(one)
    spot = canvas.to_screen(one.at).toPoint() + QPoint(8, 5)
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=spot)
    assert canvas.aim is not None  # the magnifier is there
    qtbot.mouseMove(canvas, spot + QPoint(30, 0))
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=spot + QPoint(30, 0))
    assert one.done == 1
    assert one.at == pytest.approx((800 + 30 / canvas.scale, 600), abs=1.5 / canvas.scale)
    assert canvas.aim is None


def test_the_magnifier_stands_where_the_finger_is_not(pad):
    from inspector.window.bench.loupe import place_of

    canvas = pad.canvas
    for x in (5, canvas.width() - 5):
        spot = QPointF(x, 20)
        assert not place_of(canvas, spot).contains(spot)
        assert canvas.rect().toRectF().contains(place_of(canvas, spot))


def test_the_device_is_a_touch_screen(device):
    assert device.type() == QPointingDevice.DeviceType.TouchScreen
