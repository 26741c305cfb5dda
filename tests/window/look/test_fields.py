"""Fields tell once of each value, and are named by their label."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.window.look import Key, LineField, TextField
from inspector.window.look.ring import ring_on
from tests.window.look.conftest import PX_PER_MM, SCALES


@pytest.fixture(params=[LineField, TextField])
def field(request, look, stage):
    page = QWidget()
    box = QVBoxLayout(page)
    made = request.param(look, "Claimed model year", "1953")
    box.addWidget(made)
    box.addWidget(Key(look, "next"))
    stage(page, 400, 300)
    leave(made)
    made.setFocus(Qt.FocusReason.TabFocusReason)
    made.told = []
    made.committed.connect(made.told.append)
    return made


def enter(field, qtbot):
    control = Qt.KeyboardModifier.ControlModifier
    plain = Qt.KeyboardModifier.NoModifier
    qtbot.keyClick(field.edit, Qt.Key.Key_Return, control if isinstance(field, TextField) else plain)


def write(field, qtbot, text):
    field.edit.selectAll()
    qtbot.keyClicks(field.edit, text)


def leave(field):
    field.window().findChild(Key).setFocus(Qt.FocusReason.TabFocusReason)


def test_enter_and_leaving_tell_the_value_once(field, qtbot):
    write(field, qtbot, "1954")
    assert field.told == []
    enter(field, qtbot)
    assert field.told == ["1954"]
    enter(field, qtbot)
    leave(field)
    assert field.told == ["1954"]


def test_leaving_alone_tells_it(field, qtbot):
    write(field, qtbot, "1955")
    leave(field)
    assert field.told == ["1955"]


def test_a_pause_tells_it_and_leaving_does_not_tell_it_again(field, qtbot):
    write(field, qtbot, "1956")
    with qtbot.waitSignal(field.committed, timeout=3000) as told:
        pass
    assert told.args == ["1956"]
    leave(field)
    assert field.told == ["1956"]


def test_a_value_written_and_taken_back_is_not_told(field, qtbot):
    write(field, qtbot, "1956")
    write(field, qtbot, "1953")
    leave(field)
    assert field.told == []


def test_a_value_from_outside_is_not_told(field, qtbot):
    field.set_value("1960")
    leave(field)
    assert field.value() == "1960"
    assert field.told == []


def test_the_label_names_the_control(field):
    assert field.control.accessibleName() == "Claimed model year"
    assert field.label.buddy() is field.control
    field.set_label("", "year")
    assert field.control.accessibleName() == "year"
    assert not field.label.isVisible()


def test_what_is_wrong_stands_below_in_words(field):
    field.say("is not a year: write four figures.", lead="19x3")
    assert field.note.isVisible()
    assert field.control.accessibleDescription() == "19x3 is not a year: write four figures."
    field.say("")
    assert not field.note.isVisible()


def test_the_ring_comes_with_the_keyboard(field):
    ring = ring_on(field.window())
    assert ring.isVisible()
    leave(field)
    assert ring.target() is not field.control


@pytest.mark.parametrize("scale", SCALES)
def test_a_field_is_as_high_as_a_finger(field, look, scale):
    look.set_text_scale(scale)
    assert field.control.parentWidget().minimumHeight() >= 12 * PX_PER_MM
    assert field.edit.font().pixelSize() == look.font().pixelSize()


def test_a_number_off_metal_is_written_with_slashed_noughts(look, qtbot):
    made = LineField(look, "Frame number", "6H 15042", zero=True)
    qtbot.addWidget(made)
    assert [tag.toString() for tag in made.edit.font().featureTags()] == [b"zero"]


def test_the_blank_after_the_last_word_stays_while_one_writes_on(field, qtbot):
    """Whoever keeps the value may keep it without that blank; the next word still stands where it was written."""
    field.committed.connect(lambda value: field.set_value(value.strip()))
    write(field, qtbot, "seen in the ")
    field.commit()
    qtbot.keyClicks(field.edit, "barn")
    assert field.value() == "seen in the barn"
    field.commit()
    assert field.told == ["seen in the ", "seen in the barn"]
    assert not field.waits()
