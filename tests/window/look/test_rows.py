"""Rows, facts, heads and what is unsafe: large enough, in words, nothing cut."""

from math import ceil

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible

from inspector.window.look import (
    FactRow,
    ItemHead,
    Row,
    SafetyBlock,
    SectionHead,
    Station,
    StationRow,
    Strip,
    Text,
)
from inspector.window.look.type import LEADING
from tests.window.look.conftest import PX_PER_MM, SCALES, apart, picture

FINGER = 12 * PX_PER_MM
LONG = "Vergaser mit zwei Schwimmerkammern und einem Durchlass von einem Zoll"
ROWS = {
    "label": lambda look: Row(look, "agree if figure 5 is 8", label="Numbers"),
    "plain": lambda look: Row(look, "Pad surface even", aside="see", aside_sign="see"),
    "lead": lambda look: Row(look, "Has the seller the tank that came off?", lead="2"),
    "relation": lambda look: Row(look, "close as usual: 235 apart", label="Frame and gearbox",
                                 second="up to 400: club register", second_sign="grade 2",
                                 sign="close as usual", step="next", opens=False),
    "fact": lambda look: FactRow(look, "twin-float, 1 in choke", second="body stamped 61", grade=3,
                                 kind="factory list", place="1953, page 41"),
    "case": lambda look: FactRow(look, "15 842: 1953 model", lead="if 8", grade=3, kind="factory list"),
    "station": lambda look: StationRow(look, Station("left", "Left side", "5 left", 10, 5)),
}  # fmt: skip


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("width", [200, 360, 560])
@pytest.mark.parametrize("make", ROWS.values(), ids=ROWS)
def test_a_row_is_never_lower_than_a_finger(look, qtbot, make, width, scale):
    look.set_text_scale(scale)
    row = make(look)
    qtbot.addWidget(row)
    assert row.heightForWidth(width) >= FINGER
    assert row.minimumSizeHint().height() >= FINGER


@pytest.mark.parametrize("make", ROWS.values(), ids=ROWS)
def test_a_row_is_named_by_its_words(look, qtbot, make):
    row = make(look)
    qtbot.addWidget(row)
    name = QAccessible.queryAccessibleInterface(row).text(QAccessible.Text.Name)
    words = row.station.word if isinstance(row, StationRow) else row.title
    assert words in name


@pytest.mark.parametrize("key", [Qt.Key.Key_Space, Qt.Key.Key_Return])
def test_a_row_opens_by_keyboard(look, qtbot, stage, key):
    row = stage(Row(look, "1953 alone", label="Years"), 300, 60)
    row.setFocus(Qt.FocusReason.TabFocusReason)
    with qtbot.waitSignal(row.clicked, timeout=1000):
        qtbot.keyClick(row, key)


def test_a_row_that_does_not_open_has_no_arrow_and_takes_no_focus(look, qtbot):
    pictures = {}
    for opens in (True, False):
        row = Row(look, "1953", label="Years", opens=opens)
        qtbot.addWidget(row)
        row.resize(300, 60)
        pictures[opens] = picture(row).copy(250, 0, 50, 55)
        assert (row.focusPolicy() != Qt.FocusPolicy.NoFocus) is opens
    assert apart(pictures[True], pictures[False]) > 0.01


def test_the_row_one_is_at_is_told_apart_without_its_colour(look, qtbot, scheme):
    look.set_scheme(scheme)
    row = StationRow(look, Station("left", "Left side", "5 left", 10, 5))
    qtbot.addWidget(row)
    row.resize(360, 70)
    before = picture(row)
    row.set_current(True)
    after = picture(row)
    assert row.isChecked()
    # A bar of ink at the left edge, 1.5 mm wide, from top to foot.
    bar = [after.pixelColor(2, y).name() for y in range(after.height())]
    assert set(bar[:-2]) == {look.colour("ink").name()}
    assert apart(before, after) > 0.02


@pytest.mark.parametrize("make", ROWS.values(), ids=ROWS)
def test_long_words_make_a_row_higher_instead_of_being_cut(look, qtbot, make):
    row = make(look)
    qtbot.addWidget(row)
    before = row.heightForWidth(300)
    if isinstance(row, StationRow):
        row.say(Station("left", LONG, "5 left", 10, 5))
    else:
        row.say(LONG)
    assert row.heightForWidth(300) > before


def test_a_part_that_a_row_has_not_is_refused(look, qapp):
    with pytest.raises(AttributeError, match="colour"):
        Row(look, "a", colour="red")


def test_the_source_stands_below_the_fact_where_there_is_no_room(look, qtbot):
    row = FactRow(look, "single-float, 1 in choke", second="factory option", grade=2,
                  kind="club register", place="sheet 7")  # fmt: skip
    qtbot.addWidget(row)
    assert row._beside(546)
    assert not row._beside(200)
    assert row.heightForWidth(200) > row.heightForWidth(546)


@pytest.mark.parametrize("grade", [0, 1, 2, 3])
def test_the_grade_of_a_source_is_seen(look, qtbot, grade):
    def at(number):
        row = FactRow(look, "a", grade=number, kind="kind")
        qtbot.addWidget(row)
        row.resize(540, 60)
        return picture(row)

    others = [other for other in range(4) if other != grade]
    assert all(apart(at(grade), at(other)) > 0.0005 for other in others)


def test_what_is_unsafe_is_said_in_words(look, qtbot):
    block = SafetyBlock(look, "Safety: 2 findings", ["Front wheel: rim cracked.", "Rear tyre: 17 years."],
                        "No ride before a qualified person has passed it.")  # fmt: skip
    qtbot.addWidget(block)
    name = QAccessible.queryAccessibleInterface(block).text(QAccessible.Text.Name)
    assert name == ("Safety: 2 findings Front wheel: rim cracked. Rear tyre: 17 years."
                    " No ride before a qualified person has passed it.")  # fmt: skip
    wide, narrow = block.heightForWidth(400), block.heightForWidth(200)
    assert narrow > wide
    block.resize(260, block.heightForWidth(260))
    image = picture(block)
    bar = {image.pixelColor(3, y).name() for y in range(image.height())}
    assert bar == {look.colour("fail").name()}


def test_text_is_never_read_as_markup(look, qtbot):
    text = Text(look, "3 < 4 & <b>plain</b>", lead="<i>How</i>")
    qtbot.addWidget(text)
    plain = look.words("3 < 4 & <b>plain</b>", lead="<i>How</i>")
    assert plain.text == "<i>How</i> 3 < 4 & <b>plain</b>"
    assert text.sizeHint().width() == ceil(plain.natural) + 1
    assert text.accessibleName() == "<i>How</i> 3 < 4 & <b>plain</b>"


def test_lines_of_text_keep_their_distance(look, qtbot):
    text = Text(look, "one\ntwo\nthree\nfour")
    qtbot.addWidget(text)
    single = Text(look, "one")
    qtbot.addWidget(single)
    step = (text.heightForWidth(300) - single.heightForWidth(300)) / 3
    assert step == pytest.approx(18 * LEADING, abs=0.5)


def test_a_text_grows_with_the_size_of_type(look, qtbot):
    text = Text(look, LONG)
    qtbot.addWidget(text)
    before = text.heightForWidth(250)
    look.set_text_scale(1.75)
    assert text.heightForWidth(250) > before * 1.75


def test_heads_hold_all_their_words(look, qtbot):
    head = SectionHead(look, "What would move it most", aside="now 78")
    item = ItemHead(look, "Carburettor", where="Left side", place="item 14 of 62")
    for widget in (head, item):
        qtbot.addWidget(widget)
    assert head.accessibleName() == "What would move it most now 78"
    assert head.heightForWidth(120) > head.heightForWidth(500)
    assert item.accessibleName() == "Carburettor"


@pytest.mark.parametrize("scale", SCALES)
def test_stations_stand_beside_one_another_and_can_be_chosen(look, qtbot, stage, scale):
    look.set_text_scale(scale)
    strip = Strip(look)
    strip.set_stations([Station(w, w, "5 left", 2, 5) for w in ("before", "left", "rear")], "left")
    stage(strip, 700, strip.heightForWidth(700))
    assert all(min(cell.width(), cell.height()) >= FINGER for cell in strip.keys)
    with qtbot.waitSignal(strip.chosen, timeout=1000) as chosen:
        qtbot.mouseClick(strip.keys[2], Qt.MouseButton.LeftButton)
    assert chosen.args == ["rear"]
    assert [cell.current for cell in strip.keys] == [False, True, False]
