"""Scheme, size and millimetres, and who is told when they change."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontInfo, QImage, QPainter

from inspector.window.look import SCHEMES, Look
from inspector.window.look import look as module
from inspector.window.look.look import MOST_WORDS, px_per_mm_of
from inspector.window.look.type import LEADING, Words, make_font


class Screen:
    def __init__(self, physical, logical=96.0):
        self._physical, self._logical = physical, logical

    def physicalDotsPerInch(self):
        return self._physical

    def logicalDotsPerInch(self):
        return self._logical


@pytest.mark.parametrize(
    ("physical", "used"), [(120.0, 120.0), (70.0, 70.0), (400.0, 400.0), (25.0, 96.0), (900.0, 96.0)]
)
def test_a_screen_that_tells_an_odd_size_is_not_believed(physical, used):
    assert px_per_mm_of(Screen(physical)) == pytest.approx(used / 25.4)


def test_without_a_screen_there_are_still_millimetres(qapp):
    assert px_per_mm_of(None) == pytest.approx(96 / 25.4)


@pytest.mark.parametrize(
    ("step", "pixels"),
    [("small", 16), ("text", 18), ("key", 22), ("head", 26), ("name", 40)],
)
def test_steps_of_type_are_millimetres(look, step, pixels):
    assert look.font(step).pixelSize() == pixels


@pytest.mark.parametrize(("asked", "held"), [(0.5, 1.0), (1.0, 1.0), (1.4, 1.4), (9.0, 1.75)])
def test_the_size_of_type_stays_within_bounds(look, asked, held):
    look.set_text_scale(asked)
    assert look.text_scale == held
    assert look.font("text").pixelSize() == round(3.8 * 4.7 * held)
    assert look.px(2) == round(2 * 4.7)


def test_each_change_is_told(look, qtbot):
    for change in (
        lambda: look.set_scheme("dark"),
        lambda: look.set_text_scale(1.5),
        lambda: look.set_px_per_mm(6.0),
    ):
        with qtbot.waitSignal(look.changed, timeout=1000):
            change()
    assert look.inks == SCHEMES["dark"]
    assert look.px(10) == 60


def test_a_scheme_that_is_not_there_is_refused_with_what_there_is(look):
    with pytest.raises(ValueError, match=r"'sepia'.*light, dark, sunlight or system"):
        look.set_scheme("sepia")
    assert look.scheme == "light"


@pytest.mark.parametrize(("dark", "high", "name"), [
    (True, False, "dark"), (True, True, "dark"), (False, True, "sunlight"), (False, False, "light"),
])  # fmt: skip
def test_the_system_is_followed(qapp, monkeypatch, dark, high, name):
    class Wishes:
        def contrastPreference(self):
            choice = Qt.ContrastPreference
            return choice.HighContrast if high else choice.NoPreference

    class Hints:
        def colorScheme(self):
            return Qt.ColorScheme.Dark if dark else Qt.ColorScheme.Light

        def accessibility(self):
            return Wishes()

    made = Look("system", 1.0, 4.7)
    heard = []
    made.changed.connect(lambda: heard.append(made.inks))
    monkeypatch.setattr(module.QGuiApplication, "styleHints", Hints)
    made._system_changed()
    assert made.inks == SCHEMES[name]
    assert heard == ([] if name == "light" else [SCHEMES[name]])


def test_a_system_without_a_wish_for_contrast_is_no_trouble(qapp, monkeypatch):
    class Hints:
        def colorScheme(self):
            return Qt.ColorScheme.Unknown

    monkeypatch.setattr(module.QGuiApplication, "styleHints", Hints)
    assert module.system_inks() == SCHEMES["light"]


def test_semibold_is_the_bundled_weight(look):
    info = QFontInfo(look.font("text", semibold=True))
    assert (info.family(), info.weight()) == ("Source Sans Pro", QFont.Weight.DemiBold)
    assert look.font("text").hintingPreference() == QFont.HintingPreference.PreferNoHinting


def test_the_nought_of_a_number_is_slashed(look):
    def drawn(zero):
        image = QImage(60, 80, QImage.Format.Format_Grayscale8)
        image.fill(255)
        painter = QPainter(image)
        painter.setFont(make_font(64, True, zero))
        painter.drawText(5, 65, "0")
        painter.end()
        return image

    assert drawn(True) != drawn(False)


@pytest.mark.parametrize("width", [60, 150, 400])
def test_lines_are_one_and_a_quarter_and_a_bit_apart(look, width):
    words = Words("the stamp is on the flange, facing the engine", look.font())
    lines = words.height(width) / (18 * LEADING)
    assert lines == pytest.approx(round(lines))
    assert lines >= words.natural / width


def test_words_of_nothing_take_no_room(look):
    assert Words("", look.font()).height(100) == 0.0


def test_texts_are_let_go_one_by_one_when_there_are_many(look):
    first = look.words("the first")
    for n in range(MOST_WORDS - 1):
        look.words(f"text {n}")
    assert look.words("the first") is first
    last = look.words("text 1998")
    look.words("one more")
    assert look.words("text 1998") is last
    assert look.words("the first") is not first
