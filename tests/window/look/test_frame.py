"""The bar of pages, and columns: everything in reach in landscape, portrait and large type."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScroller, QWidget

from inspector.window.look import Column, Columns, Key, PageFrame, Row, Scroll, Text
from inspector.window.look.columns import NARROW_EDGE, Abreast
from tests.window.look.conftest import PX_PER_MM, SCALES, apart, picture

WORDS = ("Machines", "Claim", "Numbers", "Walk", "Photographs", "Result", "Money", "Sheet")
REASON = "Start with a machine first."
ALL = [(word.lower(), word, True, "") for word in WORDS]
ONLY_FIRST = [(word.lower(), word, word == "Machines", REASON) for word in WORDS]


@pytest.fixture
def frame(look, stage):
    made = PageFrame(look, QWidget())
    made.set_pages(ALL)
    made.set_current("walk")
    made.set_machine("Brackwater Heron 600", "claimed 1953")
    made.set_kept("kept 10:42")
    return stage(made, 1280, 800)


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("size", [(1280, 800), (800, 1280), (1024, 600), (420, 900)])
def test_every_page_is_in_reach_and_as_large_as_a_finger(frame, look, size, scale):
    look.set_text_scale(scale)
    frame.resize(*size)
    for name in frame.bar.names:
        place = name.rect().translated(name.mapTo(frame, name.rect().topLeft()))
        assert frame.rect().contains(place)
        assert min(place.width(), place.height()) >= 12 * PX_PER_MM
    assert min(frame.undo.width(), frame.undo.height()) >= 12 * PX_PER_MM
    places = [name.geometry() for name in frame.bar.names]
    assert not [1 for n, one in enumerate(places) for other in places[n + 1 :] if one.intersects(other)]


def test_pages_stand_on_top_where_they_fit_and_at_the_foot_in_portrait(frame, look):
    assert not frame.pages_at_foot
    machine = frame._name.geometry().right()
    assert machine < frame.bar.x()
    assert frame.bar.geometry().right() < frame._kept.x()
    frame.resize(800, 1280)
    assert frame.pages_at_foot
    frame.resize(1280, 800)
    assert not frame.pages_at_foot
    look.set_text_scale(1.75)
    assert frame.pages_at_foot


def test_a_page_is_chosen_by_touch_and_by_keyboard(frame, qtbot):
    with qtbot.waitSignal(frame.pageChosen, timeout=1000) as chosen:
        qtbot.mouseClick(frame.bar.name("result"), Qt.MouseButton.LeftButton)
    assert chosen.args == ["result"]
    name = frame.bar.name("claim")
    name.setFocus(Qt.FocusReason.TabFocusReason)
    with qtbot.waitSignal(frame.pageChosen, timeout=1000) as chosen:
        qtbot.keyClick(name, Qt.Key.Key_Return)
    assert chosen.args == ["claim"]


def test_a_page_that_is_off_says_why(frame, qtbot):
    frame.set_pages(ONLY_FIRST)
    chosen, told = [], []
    frame.pageChosen.connect(chosen.append)
    name = frame.bar.name("walk")
    name.refused.connect(told.append)
    qtbot.mouseClick(name, Qt.MouseButton.LeftButton)
    assert (chosen, told) == ([], [REASON])
    assert name.accessibleDescription() == REASON
    frame.set_pages(ALL)
    qtbot.mouseClick(name, Qt.MouseButton.LeftButton)
    assert chosen == ["walk"]


def test_names_of_pages_differ_by_more_than_colour(frame, scheme, look):
    look.set_scheme(scheme)
    name = frame.bar.name("walk")
    current = picture(name)
    name.set_current(False)
    plain = picture(name)
    name.turn_off(REASON)
    off = picture(name)
    assert apart(current, plain) > 0.01
    assert apart(plain, off) > 0.005


def test_names_keep_the_focus_when_pages_are_set_again(frame, qtbot):
    name = frame.bar.name("claim")
    name.setFocus(Qt.FocusReason.TabFocusReason)
    frame.set_pages(ONLY_FIRST)
    assert frame.bar.name("claim") is name
    assert name.hasFocus()
    assert frame.bar.current() == "walk"


def test_the_body_may_be_exchanged(frame):
    other = QWidget()
    frame.set_body(other)
    assert other.parentWidget() is frame
    assert frame.layout().indexOf(other) == 1


@pytest.mark.parametrize("width", [1280, 800, 420])
def test_a_long_name_of_a_machine_ends_before_when_it_was_kept(frame, width):
    long = "Brackwater Heron 600 with the long name that somebody gave it " * 6
    frame.set_machine(long, long)
    frame.resize(width, 800)
    kept, name, second = parts_of(frame)
    assert name.geometry().right() < kept.x()
    assert second.geometry().right() < kept.x()
    assert name.words.endswith("…")
    assert name.accessibleName() == name.toolTip() == long
    frame.set_machine("Heron", "claimed 1953")
    assert (name.words, name.accessibleName(), name.toolTip()) == ("Heron", "Heron", "")


def parts_of(frame):
    """The texts of the upper bar: when it was kept, the machine's name, what it is claimed to be."""
    texts = [text for text in frame.findChildren(Text) if text.isVisible()]
    kept = next(text for text in texts if text.words == "kept 10:42")
    return [kept, *[text for text in texts if text is not kept]]


def columns(look, stage, size):
    parts = []
    for wide in (77, 0, 66):
        column = Column(look)
        column.add(Text(look, "Lamp from behind and a mirror: the stamp is on the flange. " * 4))
        column.add(Row(look, "1953 alone", label="Years"))
        parts.append((column, wide))
    return stage(Columns(look, parts), *size), [part for part, _ in parts]


@pytest.mark.parametrize(
    ("size", "scale", "form"),
    [((1280, 800), 1.0, "wide"), ((1280, 800), 1.75, "beside"), ((800, 1280), 1.0, "beside"),
     ((800, 1280), 1.75, "one"), ((420, 800), 1.0, "one")],
)  # fmt: skip
def test_columns_take_the_form_that_fits(look, stage, size, scale, form):
    look.set_text_scale(scale)
    made, parts = columns(look, stage, size)
    assert made.form() == form
    assert made.narrow is (form != "wide")
    for part in parts:
        assert part.isVisible()
        assert part.width() <= size[0]
    if form == "wide":
        assert [part.width() for part in (parts[0], parts[2])] == [look.px(77), look.px(66)]


def test_columns_tell_when_they_become_one_and_lose_nothing(look, stage, qtbot):
    made, parts = columns(look, stage, (1280, 800))
    told = []
    made.narrowChanged.connect(told.append)
    for width in (700, 690, 1280, 500, 1290):
        made.resize(width, 800)
    assert told == [True, False, True, False]
    assert all(part.isVisible() and len(part.widgets()) == 2 for part in parts)


class Asked(Text):
    """Notes each width for which its height is worked out."""

    def __init__(self, look, text):
        self.widths = set()
        super().__init__(look, text)

    def heightForWidth(self, width):
        self.widths.add(width)
        return super().heightForWidth(width)


def test_in_one_column_nothing_is_measured_at_a_width_that_it_does_not_have(look, stage, qtbot):
    first, second, rest = Column(look), Column(look), Column(look)
    made = stage(Columns(look, [(first, 77), (rest, 0), (second, 66)]), 800, 1280)
    text = Asked(look, "Lamp from behind and a mirror: the stamp is on the flange. " * 8)
    rest.add(text)
    inner = 800 - 2 * look.px(NARROW_EDGE)
    qtbot.waitUntil(lambda: text.width() == inner)
    before = text.height()
    text.widths.clear()
    text.say("The stamp is on the flange, the date beside it, the maker's sign below both. " * 12)
    qtbot.waitUntil(lambda: text.height() > before)
    assert made.form() == "beside"
    assert text.widths == {inner}


def test_columns_abreast_share_the_width_and_are_as_high_as_the_highest(look, stage, qtbot):
    low, high = Column(look), Column(look)
    low.add(Text(look, "short"))
    words = high.add(Text(look, "Lamp from behind and a mirror: the stamp is on the flange. " * 8))
    abreast = stage(Abreast(look, [(low, 70), (high, 30)]), 600, 300)
    assert [(part.x(), part.width()) for part in (low, high)] == [(0, 420), (420, 180)]
    assert low.height() == high.height() == abreast.heightForWidth(600)
    before = high.height()
    words.say("now short")
    qtbot.waitUntil(lambda: high.height() < before)
    assert low.height() == high.height() == abreast.heightForWidth(600)


def test_a_column_scrolls_by_finger_and_shows_where_it_is(look, stage):
    column = Column(look)
    for number in range(30):
        column.add(Row(look, f"row {number}"), 0)
    scroll = stage(Scroll(look, column), 300, 400)
    assert QScroller.hasScroller(scroll.viewport())
    assert scroll.bar.isVisible()
    scroll.bar.setValue(120)
    assert scroll.verticalScrollBar().value() == 120
    # The bar lies over the margin and takes no room from what scrolls.
    assert scroll.viewport().width() == 300
    column.clear()
    assert column.widgets() == []


def test_gaps_are_millimetres_and_follow_the_screen(look, stage, qtbot):
    column = Column(look, edge=6, top=0)
    first, second = column.add(Key(look, "a")), column.add(Key(look, "b"), 4)
    stage(column, 300, 300)
    assert (first.x(), second.y() - first.geometry().bottom() - 1) == (look.px(6), look.px(4))
    look.set_px_per_mm(3.0)
    qtbot.waitUntil(lambda: (first.x(), second.y() - first.geometry().bottom() - 1) == (18, 12))
    assert (first.x(), second.y() - first.geometry().bottom() - 1) == (18, 12)


@pytest.mark.parametrize("scale", SCALES)
def test_everything_is_drawn_again_in_another_scheme(frame, look, scale):
    look.set_text_scale(scale)
    light = picture(frame)
    look.set_scheme("dark")
    dark = picture(frame)
    assert apart(light, dark) > 0.9
