"""Ten minutes before the stampings: read, doubted, compared, put on the sheet, undone to nothing."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

CTRL, ALT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier


def keys(house, text):
    for letter in text:
        house.qtbot.keyClicks(QApplication.focusWidget(), letter)


def test_the_numbers_of_a_machine_are_read_from_the_headstock_to_the_papers(house):
    house.build()
    house.start(1953)
    house.page("numbers")
    page = house.window.pages["numbers"]

    for number in ("6h 158,342", "6he 15842", "g 16077"):
        keys(house, number)
        house.key(Qt.Key.Key_1, ALT)
        if number[0] != "g":
            house.key(Qt.Key.Key_Return)
    house.key(Qt.Key.Key_Return)
    house.press(page.place.there.states.key("cannot be seen"))
    found = {reading.place: (reading.typed(), reading.state.value) for reading in house.record.readings}
    assert found == {
        "frame": ("6H 15[83]42", "read"), "engine": ("6HE 15842", "read"), "gearbox": ("G 16077", "read"),
        "fork": ("", "cannot be seen"),
    }  # fmt: skip

    house.press(page.places.paper)
    house.type(page.paper.name, "Registration book")
    house.press(page.paper.more)
    house.type(page.paper.numbers[0].number, "6H 15B42")
    house.qtbot.waitUntil(lambda: "one slip" in page.paper.numbers[0].stands.words)

    tells(house.desk.judgement)
    undoes_all_and_does_it_again(house)


def tells(judged):
    stands = {standing.places: str(standing.sentence) for standing in judged.standings}
    assert stands[("frame", "engine")] == "agree if figure 5 is 8"
    assert judged.years.together.years == (1953,)


def undoes_all_and_does_it_again(house):
    count = 0
    while house.desk.session.undo_label:
        house.key(Qt.Key.Key_Z, CTRL)
        count += 1
        assert count < 30
    assert house.record.readings == house.record.papers == ()
    while house.desk.session.redo_label:
        house.key(Qt.Key.Key_Y, CTRL)
    assert [reading.typed() for reading in house.record.readings] == ["6H 15[83]42", "6HE 15842", "G 16077", ""]


def test_what_was_typed_is_there_when_the_window_opens_again(house):
    house.build()
    house.start(1953)
    house.page("numbers")
    keys(house, "6H 15?42")
    record = house.record.id
    house.close()
    house.build()
    house.desk.open(record)
    house.page("numbers")
    assert [reading.typed() for reading in house.record.readings] == ["6H 15?42"]
    cells = house.window.pages["numbers"].place.cells
    assert [key.accessibleName() for key in cells.keys if key.isVisible()][4] == "Figure 5: unreadable"
    assert cells.current().number == 5
