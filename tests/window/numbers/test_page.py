"""The page Numbers under a person's hands: keys, a finger, the mouse; each figure is kept at once."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QImage, QMouseEvent, QPointingDevice
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from inspector.record.words import Clarity, HowRead, NumberState, PaperState, StampSight
from inspector.window.look.figures import FigureCell
from inspector.window.numbers.readings import Shown
from tests.journeys.drive import picture
from tests.window.walked import begin

CTRL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def numbers(house):
    """A machine without a number, the page Numbers open at the frame."""
    house.build()
    begin(house)
    house.settle()
    house.page("numbers")
    return house.window.pages["numbers"]


def reading(house, place="frame", n=0):
    found = [r for r in house.record.readings if r.place == place]
    return found[n] if n < len(found) else None


def typed(house, place="frame"):
    found = reading(house, place)
    return found.typed() if found else ""


def keys(house, text):
    for letter in text:
        house.qtbot.keyClicks(QApplication.focusWidget(), letter)


def shown_figures(page):
    shown = [key.cell for key in page.place.cells.keys if key.isVisible() and key.cell.kind != "empty"]
    return "".join(cell.text or "?" for cell in shown)


def finger(cell):
    """The cell is touched as a finger touches it."""
    device = QTest.createTouchDevice(QPointingDevice.DeviceType.TouchScreen)
    middle = cell.rect().center()
    QTest.touchEvent(cell, device).press(1, middle, cell).commit()
    QTest.touchEvent(cell, device).release(1, middle, cell).commit()
    QApplication.processEvents()


def test_one_types_at_once_and_every_figure_is_kept(house, numbers):
    assert isinstance(QApplication.focusWidget(), FigureCell)
    for letter, so_far in (("6", "6"), ("h", "6H"), (" ", "6H"), ("1", "6H 1"), ("5", "6H 15")):
        keys(house, letter)
        assert typed(house) == so_far
    keys(house, "8,342")
    assert typed(house) == "6H 15[83]42"
    assert shown_figures(numbers) == "6H15842"
    kept = house.desk.library.load(house.record.id).record
    assert kept.readings == house.record.readings
    assert reading(house).state is NumberState.READ


def test_how_a_number_was_read_is_said_by_nobody_but_the_person(house, numbers):
    keys(house, "6H 15842")
    assert reading(house).how_read is HowRead.NOT_SAID
    how = numbers.place.how
    assert how.unsaid.isVisible()
    assert not any(key.isChecked() for key in how.how.keys)
    assert house.desk.judgement.years.together.years == ()
    house.press(how.how.key("from metal by me"))
    assert reading(house).how_read is HowRead.METAL
    assert not how.unsaid.isVisible()
    assert house.desk.judgement.years.together.years == (1953,)


def test_typing_in_one_go_is_one_step_to_undo(house, numbers):
    keys(house, "6H 15842")
    house.key(Qt.Key.Key_Home)
    keys(house, "9")
    assert typed(house) == "9H 15842"
    house.key(Qt.Key.Key_Z, CTRL)
    assert typed(house) == "6H 15842"
    assert shown_figures(numbers) == "6H15842"
    house.key(Qt.Key.Key_Z, CTRL)
    assert house.record.readings == ()
    assert shown_figures(numbers) == ""
    house.key(Qt.Key.Key_Y, CTRL)
    assert typed(house) == "6H 15842"


def test_arrows_home_end_delete_insert_and_backspace(house, numbers):
    keys(house, "6H 1542")
    for _ in range(2):
        house.key(Qt.Key.Key_Left)
    house.key(Qt.Key.Key_Insert)
    assert typed(house) == "6H 15?42"
    keys(house, "8")
    assert typed(house) == "6H 15842"
    house.key(Qt.Key.Key_Home)
    house.key(Qt.Key.Key_Delete)
    assert typed(house) == "H 15842"
    house.key(Qt.Key.Key_End)
    house.key(Qt.Key.Key_Backspace)
    assert typed(house) == "H 1584"
    assert numbers.place.cells.current().hasFocus()


def test_a_whole_number_is_pasted(house, numbers):
    QApplication.clipboard().setText(" 6h 15[83]42\n")
    house.key(Qt.Key.Key_V, CTRL)
    assert typed(house) == "6H 15[83]42"
    QApplication.clipboard().setText("6H 15[83")
    house.key(Qt.Key.Key_V, CTRL)
    assert typed(house) == "6H 15[83]42"
    assert "bracket" in house.says()


def test_a_touched_cell_is_written_over_and_told_by_name(house, numbers):
    keys(house, "6H 15842")
    cell = numbers.place.cells.keys[4]
    house.press(cell)
    assert cell.hasFocus()
    assert cell.accessibleName() == "Figure 5: 8"
    assert not numbers.pad.isVisible()
    keys(house, "3")
    assert typed(house) == "6H 15342"
    assert numbers.place.cells.at == 5


def test_a_finger_brings_keys_to_touch_and_writes_with_them(house, numbers):
    finger(numbers.place.cells.current())
    house.qtbot.waitUntil(numbers.pad.isVisible)
    for word in ("6", "H", "gap", "1", "5", "8", "or", "3", "4", "2"):
        house.press(numbers.pad.keys[word])
    assert typed(house) == "6H 15[83]42"
    house.press(numbers.pad.keys["left"])
    house.press(numbers.pad.keys["?"])
    assert typed(house) == "6H 15[83]4?"
    house.press(numbers.pad.keys["back"])
    house.press(numbers.pad.keys["back"])
    assert typed(house) == "6H 15[83]"
    house.press(numbers.pad.keys["done"])
    assert not numbers.pad.isVisible()
    assert numbers.place.cells.current().hasFocus()


def test_letters_that_the_rules_never_use_are_dimmed_and_not_forbidden(house, numbers):
    pad = numbers.pad
    assert {word for word, key in pad.keys.items() if getattr(key, "dimmed", False)} == {"I", "O", "Q"}
    numbers.show_pad(True)
    house.press(pad.keys["O"])
    assert typed(house) == "O"
    assert "never" in pad.keys["O"].accessibleName()


def test_how_well_a_figure_was_seen_is_one_touch(house, numbers):
    keys(house, "6H 15842")
    house.press(numbers.place.cells.keys[4])
    panel = numbers.place.panel
    house.press(panel.how_clear.key("probable"))
    assert typed(house) == "6H 15[8]42"
    house.press(panel.others.key("3"))
    assert typed(house) == "6H 15[83]42"
    house.press(panel.others.key("3"))
    assert typed(house) == "6H 15[8]42"
    house.press(panel.how_clear.key("unreadable"))
    assert typed(house) == "6H 15?42"
    house.press(panel.how_clear.key("clear"))
    assert typed(house) == "6H 15?42"
    assert "what figure 5 could be" in house.says()
    assert panel.how_clear.held() == ["unreadable"]


def test_look_alikes_are_offered_and_none_is_taken_by_itself(house, numbers):
    keys(house, "6H 15842")
    house.press(numbers.place.cells.keys[4])
    offered = [key.property("option") for key in numbers.place.panel.others.keys]
    assert offered[0] == "8"
    assert {"3", "0", "6"} < set(offered)
    assert numbers.place.panel.others.held() == ["8"]
    assert reading(house).figures[5].clarity is Clarity.CLEAR


def test_something_else_that_a_figure_could_be_is_typed(house, numbers):
    keys(house, "6H 15842")
    house.press(numbers.place.cells.keys[4])
    house.press(numbers.place.panel.others.key("more"))
    assert numbers.pad.isVisible()
    keys(house, "7")
    assert typed(house) == "6H 15[87]42"


def test_what_it_can_be_follows_with_the_first_guess_first(house, numbers):
    keys(house, "6H 15[83]42")
    rows = [opening.row for opening in numbers.place.can_be.rows.widgets()]
    assert [row.lead for row in rows] == ["if 8", "if 3"]
    # The blocks of the invented spares lists of 1952 and 1953, page 3, in the sample profile.
    assert "1953 model" in rows[0].title
    assert rows[0].second == "built October 1952"
    assert "1952 model" in rows[1].title
    assert rows[1].second == "built August 1952"
    assert numbers.place.can_be.head.aside == "2 numbers remain"
    house.press(rows[0])
    assert "Illustrated spares list, 1953 models" in rows[0].parent().body.widgets()[-1].title


def test_no_number_there_is_an_answer_and_waits_for_no_figures(house, numbers):
    there = numbers.place.there
    house.press(there.states.key("ground or filed away"))
    assert reading(house).state is NumberState.GROUND
    assert not numbers.place.cells.isVisible()
    house.press(there.states.key("ground or filed away"))
    assert reading(house).state is NumberState.READ
    keys(house, "")
    numbers.begin()
    keys(house, "6")
    assert not there.isVisible()


def test_cleaned_is_kept_only_with_whose_leave(house, numbers):
    keys(house, "6H")
    how = numbers.place.how
    cleaned = how.cleaned.key("cleaned")
    with house.qtbot.waitSignal(cleaned.refused) as refused:
        house.press(cleaned)
    assert "leave" in refused.args[0]
    assert not reading(house).cleaned
    house.type(how.leave, "R. Quill (invented)")
    house.press(cleaned)
    assert reading(house).cleaned
    assert reading(house).leave_of == "R. Quill (invented)"
    house.type(how.leave, "")
    assert reading(house).leave_of == "R. Quill (invented)"
    assert how.leave.value() == "R. Quill (invented)"
    house.press(how.cleaned.key("found"))
    house.type(how.leave, "")
    assert (reading(house).cleaned, reading(house).leave_of) == (False, "")


def test_a_place_is_read_again_beside_the_first_reading(house, numbers):
    keys(house, "6H 15?42")
    house.press(numbers.places.another)
    assert numbers.shown == Shown(place="frame", reading="frame-2")
    keys(house, "6H 15842")
    assert [r.typed() for r in house.record.readings] == ["6H 15?42", "6H 15842"]
    rows = [shown for shown in numbers.places.rows if shown.place == "frame"]
    assert len(rows) == 2
    house.press(numbers.places.rows[rows[0]])
    assert shown_figures(numbers) == "6H15?42"
    house.press(numbers.place.out)
    assert [r.typed() for r in house.record.readings] == ["6H 15842"]
    assert numbers.shown == Shown(place="frame", reading="frame-2")


def test_enter_goes_on_to_the_next_place_and_page_up_back(house, numbers):
    keys(house, "6H 15842")
    house.key(Qt.Key.Key_Return)
    assert numbers.shown.place == "engine"
    keys(house, "6HE 1")
    assert typed(house, "engine") == "6HE 1"
    house.key(Qt.Key.Key_PageUp)
    assert numbers.shown == Shown(place="frame", reading="frame")
    assert typed(house) == "6H 15842"


def test_the_list_tells_each_number_and_what_is_doubtful(house, numbers):
    row = numbers.places.rows[Shown(place="frame")]
    assert row.state == "not read yet"
    keys(house, "6H 15[83]42")
    row = numbers.places.rows[numbers.shown]
    assert row.state == "8 or 3 at figure 5; not said how"
    assert "8 or 3" in row.accessibleName()
    assert [cell.kind for cell in row.cells].count("probable") == 1


def test_numbers_stand_beside_one_another_as_they_are_written(house, numbers):
    keys(house, "6H 15[83]42")
    house.press(numbers.place.how.how.key("from metal by me"))
    numbers.step(1)
    keys(house, "6HE 15842")
    house.press(numbers.place.how.how.key("from metal by me"))
    numbers.begin()
    house.qtbot.waitUntil(lambda: stood(numbers) == ("agree if", "agree if figure 5 is 8"))
    house.key(Qt.Key.Key_Backspace)
    keys(house, "9")
    house.qtbot.waitUntil(lambda: stood(numbers)[0] == "disagree as read")
    assert stood(numbers)[1].startswith("disagree as read")


def stood(numbers):
    """Sign and words of how frame and engine stand."""
    rows = [o.row for o in numbers.beside.near.widgets() if hasattr(o, "row")]
    found = [row for row in rows if row.label == "Frame number and engine number"]
    return (found[0].sign, found[0].title) if found else None


def test_what_was_seen_of_the_stamping_is_one_touch_and_one_word(house, numbers):
    assert not numbers.beside.stamping.isVisible()
    keys(house, "6H 15842")
    stamping = numbers.beside.stamping
    house.qtbot.waitUntil(stamping.isVisible)
    row = stamping.rows["depth"]
    assert row.aside == "not looked"
    house.press(row)
    house.press(next(r for r in stamping.list.rows if r.property("option") == "cannot see"))
    assert reading(house).stamping == {"depth": StampSight.CANNOT_SEE}
    house.qtbot.waitUntil(lambda: (row.aside, row.aside_sign) == ("cannot see", "cannot see"))
    house.press(row)
    house.press(next(r for r in stamping.list.rows if r.property("option") == "not looked"))
    assert reading(house).stamping == {}


def test_a_paper_quotes_numbers_of_places_and_is_told_beside_the_metal(house, numbers):
    keys(house, "6H 15842")
    house.press(numbers.places.paper)
    view = numbers.paper
    assert view.name.control.hasFocus()
    house.type(view.name, "Registration book")
    assert view.state.held() == []
    assert house.record.papers[0].state is PaperState.UNSAID
    house.press(view.state.key("copy"))
    row = numbers.places.rows[numbers.shown]
    house.qtbot.waitUntil(lambda: row.state == "not tied to this machine")
    house.press(view.more)
    house.type(view.numbers[0].number, "6H 15B42")
    (paper,) = house.record.papers
    assert [(q.number, q.place) for q in paper.quoted] == [("6H 15B42", "frame")]
    assert view.numbers[0].stands.words.startswith("one slip")
    house.press(view.numbers[0].refers.key)
    house.press(view.numbers[0].refers.key.list.rows[1])
    assert house.record.papers[0].quoted[0].place == "engine"
    house.type(view.lines["named"], "Mara Quill (invented)")
    house.type(view.lines["dated"], "1953-03-14")
    assert (house.record.papers[0].named, house.record.papers[0].dated) == ("Mara Quill (invented)", "1953-03-14")
    house.press(view.numbers[0].out)
    assert house.record.papers[0].quoted == ()
    house.press(view.out)
    assert house.record.papers == ()
    assert numbers.shown.place == "frame"


def test_the_same_number_in_another_record_is_noticed(house, numbers):
    first = house.record.id
    keys(house, "6H 15842")
    begin(house)
    assert house.record.id != first
    house.page("numbers")
    keys(house, "6H 15842")
    house.qtbot.waitUntil(numbers.beside.elsewhere.isVisible)
    words = [text.words for text in numbers.beside.elsewhere.widgets()]
    assert "6H 15842" in words[0]
    assert not any(never in " ".join(words) for never in ("real", "fake"))


def test_a_long_number_stands_on_several_lines_inside_its_column(house, numbers):
    keys(house, "1HFPC4108GA000123")
    house.settle()
    cells = [key for key in numbers.place.cells.keys if key.isVisible()]
    assert len(cells) >= 17
    assert all(cell.geometry().right() <= numbers.place.cells.width() for cell in cells)
    assert len({cell.y() for cell in cells}) >= 2
    assert not any(a.geometry().intersects(b.geometry()) for a in cells for b in cells if a is not b)
    assert numbers.place.cells.rect().contains(cells[-1].geometry().center() + QPoint(0, cells[-1].height() // 2 - 1))


def test_a_photograph_of_the_place_stands_over_its_figures(house, numbers):
    keys(house, "6H")
    file = picture(house.folder / "pad.jpg", 3)
    house.drop(numbers, [file])
    house.qtbot.waitUntil(lambda: len(house.record.photographs) == 1)
    (photograph,) = house.record.photographs
    assert (photograph.place, photograph.item, photograph.name) == ("frame", "", "pad.jpg")
    house.settle()
    pane = numbers.place.photographs.pane
    assert pane.isVisible()
    assert pane.picture.accessibleName() == "pad.jpg"
    assert pane.mapTo(numbers, pane.rect().bottomLeft()).y() <= numbers.place.cells.mapTo(numbers, QPoint(0, 0)).y()
    share = pane.picture.share
    house.press(pane.larger)
    assert pane.picture.share > share
    house.press(pane.away)
    assert not pane.isVisible()
    house.press(numbers.place.photographs.over)
    assert pane.isVisible()
    assert not numbers.place.photographs.over.isVisible()


def test_a_second_photograph_is_pasted_and_shown_in_turn(house, numbers):
    house.drop(numbers, [picture(house.folder / "pad.jpg", 3)])
    house.qtbot.waitUntil(lambda: len(house.record.photographs) == 1)
    image = QImage(300, 200, QImage.Format.Format_RGB32)
    image.fill(QColor(80, 120, 60))
    QApplication.clipboard().setImage(image)
    numbers.begin()
    house.key(Qt.Key.Key_V, CTRL)
    house.qtbot.waitUntil(lambda: len(house.record.photographs) == 2)
    house.settle()
    pane = numbers.place.photographs.pane
    assert pane.photograph.name == "pasted.png"
    assert pane.next.title == "2 of 2"
    house.press(pane.next)
    assert pane.photograph.name == "pad.jpg"
    assert house.record.readings == ()


def test_photographs_go_with_their_place(house, numbers):
    house.drop(numbers, [picture(house.folder / "pad.jpg", 3)])
    house.qtbot.waitUntil(lambda: len(house.record.photographs) == 1)
    house.settle()
    numbers.step(1)
    assert not numbers.place.photographs.pane.isVisible()
    numbers.step(-1)
    assert numbers.place.photographs.pane.isVisible()


def test_a_17_character_number_of_an_old_machine_is_told_as_not_applicable(house, numbers):
    # 1M8GDM9AXKP042788 is the worked example of the check digit in public guides to 49 CFR 565.
    keys(house, "1M8GDM9AXKP042788")
    house.qtbot.waitUntil(numbers.beside.seventeen.isVisible)
    words = [text.words for text in numbers.beside.seventeen.widgets()]
    assert words[0].startswith("Not applicable")
    assert "565" in words[-1]


def test_a_pen_brings_the_keys_too(house, numbers):
    cell = numbers.place.cells.current()
    pen = QPointingDevice(
        "pen", 7, QPointingDevice.DeviceType.Stylus, QPointingDevice.PointerType.Pen,
        QPointingDevice.Capability.Position, 1, 1,
    )  # fmt: skip
    middle = QPointF(cell.rect().center())
    press = QMouseEvent(
        QEvent.Type.MouseButtonPress, middle, cell.mapToGlobal(middle), Qt.MouseButton.LeftButton,
        Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, pen,
    )  # fmt: skip
    QApplication.sendEvent(cell, press)
    assert numbers.pad.isVisible()


def test_the_keys_that_write_figures_are_listed(house, numbers):
    listed = {action.text(): action.shortcut().toString() for action in numbers.actions()}
    assert listed["The figure is unreadable"] == "?"
    assert listed["or: the next one is what else the figure could be"] == ","
    keys(house, "1,7?")
    assert typed(house) == "[17]?"


def below_can_be(numbers):
    return [widget.words for widget in numbers.place.can_be.rows.widgets() if hasattr(widget, "words")]


def test_a_number_that_follows_no_rule_is_told_with_the_rule_it_came_nearest(house, numbers):
    keys(house, "6H 1534")
    assert numbers.place.can_be.head.aside == "follows no known rule"
    assert below_can_be(numbers) == [
        '6H 1534 follows no known rule. Nearest is "6H and five figures": one figure too few.'
    ]
    for _ in "1534":
        house.key(Qt.Key.Key_Backspace)
    keys(house, "99999")
    assert numbers.place.can_be.head.aside == "outside every known block"
    assert "Nearest is" in below_can_be(numbers)[0]


def test_many_numbers_are_told_in_groups_of_three(house, numbers):
    keys(house, "6H ?????")
    assert numbers.place.can_be.head.aside == "16\N{THIN SPACE}450 numbers remain"


def test_several_doubtful_figures_are_named_with_what_they_would_be(house, numbers):
    keys(house, "6H 1[56][03]42")
    rows = [opening.row for opening in numbers.place.can_be.rows.widgets() if hasattr(opening, "row")]
    assert rows[0].second.startswith("if figure 4 is 5 and figure 5 is 0; built ")
    assert {row.lead for row in rows if row.second.startswith("if ")} == {""}


def test_the_row_that_is_open_is_seen_in_the_list(house, numbers):
    house.window.resize(1280, 800)
    house.settle()
    for _ in range(len(numbers.places.rows) - 1):
        numbers.step(1)
    house.settle()
    row = numbers.places.rows[numbers.shown]
    assert row.visibleRegion().boundingRect().height() == row.height()
    assert row.visibleRegion().boundingRect().bottom() == row.rect().bottom()


def test_which_reading_of_how_many_is_told_first(house, numbers):
    keys(house, "6H 15?42")
    house.press(numbers.places.another)
    keys(house, "6H 15842")
    assert numbers.place.which.words.startswith("reading 2 of 2, as found")
