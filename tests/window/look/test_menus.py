"""Lists of words: opened by a key or anywhere, gone after a pick, a touch beside it or Esc."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.window.look import SEEN, ChoiceField, Key, MenuKey, Option, WordList, offer
from tests.window.look.conftest import PX_PER_MM, SCALES

OPTIONS = [Option(name, name, sign=name) for name in SEEN[1:]]


@pytest.fixture
def menu(look, stage):
    page = QWidget()
    box = QVBoxLayout(page)
    key = MenuKey(look, "not seen", OPTIONS)
    box.addWidget(key)
    box.addWidget(Key(look, "next"))
    box.addStretch(1)
    stage(page, 500, 600)
    key.setFocus(Qt.FocusReason.TabFocusReason)
    return key


def lists(widget):
    return [found for found in widget.window().findChildren(WordList) if found.isVisible()]


def test_a_touch_opens_the_words_and_a_touch_picks_one(menu, qtbot):
    qtbot.mouseClick(menu, Qt.MouseButton.LeftButton)
    (words,) = lists(menu)
    assert [row.title for row in words.rows] == list(SEEN[1:])
    with qtbot.waitSignal(menu.picked, timeout=1000) as picked:
        qtbot.mouseClick(words.rows[2], Qt.MouseButton.LeftButton)
    assert picked.args == ["cannot be seen"]
    assert lists(menu) == []
    # Nothing is held until the page says so.
    assert menu.picked_id() == ""
    menu.set_picked("cannot be seen")
    assert (menu.title, menu.sign, menu.held) == ("cannot be seen", "cannot be seen", "chosen")
    menu.set_picked("")
    assert (menu.title, menu.sign, menu.held) == ("not seen", "", "")


def test_the_keyboard_alone_opens_moves_and_picks(menu, qtbot):
    qtbot.keyClick(menu, Qt.Key.Key_Return)
    (words,) = lists(menu)
    assert words.rows[0].hasFocus()
    qtbot.keyClick(words.rows[0], Qt.Key.Key_Up)
    assert words.rows[-1].hasFocus()
    qtbot.keyClick(words.rows[-1], Qt.Key.Key_Down)
    qtbot.keyClick(words.rows[0], Qt.Key.Key_Tab)
    with qtbot.waitSignal(menu.picked, timeout=1000) as picked:
        qtbot.keyClick(words.rows[1], Qt.Key.Key_Space)
    assert picked.args == [SEEN[2]]
    assert menu.hasFocus()


@pytest.mark.parametrize("leave", ["esc", "beside", "resize"])
def test_it_closes_without_a_pick(menu, qtbot, leave):
    words = menu.open()
    told = []
    menu.picked.connect(told.append)
    if leave == "esc":
        qtbot.keyClick(words.rows[0], Qt.Key.Key_Escape)
    elif leave == "beside":
        qtbot.mouseClick(words, Qt.MouseButton.LeftButton, pos=QPoint(490, 590))
    else:
        menu.window().resize(520, 620)
        qtbot.waitUntil(lambda: lists(menu) == [], timeout=1000)
    assert lists(menu) == []
    assert told == []


def test_the_shortcuts_of_the_page_wait_while_it_is_open(menu, qtbot):
    heard = []
    shortcut = QShortcut(QKeySequence("1"), menu.window())
    shortcut.activated.connect(lambda: heard.append(1))
    words = menu.open()
    qtbot.keyClick(words.rows[0], Qt.Key.Key_1)
    assert heard == []
    qtbot.keyClick(words.rows[0], Qt.Key.Key_Escape)
    qtbot.keyClick(menu, Qt.Key.Key_1)
    assert heard == [1]


@pytest.mark.parametrize("scale", SCALES)
def test_every_word_is_as_large_as_a_finger_and_in_the_window(menu, look, scale):
    look.set_text_scale(scale)
    words = offer(look, menu, OPTIONS, menu.mapToGlobal(QPoint(480, 590)))
    for row in words.rows:
        assert row.height() >= 12 * PX_PER_MM
        assert row.width() >= 12 * PX_PER_MM
    first = words.rows[0].mapTo(menu.window(), QPoint(0, 0))
    assert menu.window().rect().contains(first)
    words.close()


def test_a_word_that_is_off_says_why_and_stays(look, menu, qtbot):
    menu.set_options([Option("a", "a", reason="This version has none.")])
    words = menu.open()
    told = []
    words.rows[0].refused.connect(told.append)
    qtbot.mouseClick(words.rows[0], Qt.MouseButton.LeftButton)
    assert told == ["This version has none."]
    assert words.isVisible()
    words.close()


def test_a_field_of_choice_commits_each_choice_once(look, qtbot, stage):
    field = ChoiceField(look, "How read", [Option("metal", "from metal by me"), Option("paper", "from paper")],
                        none="choose")  # fmt: skip
    stage(field, 400, 300)
    told = []
    field.committed.connect(told.append)
    assert field.key.accessibleName() == "How read, choose"
    for _ in range(2):
        field.key.open().rows[1].click()
    assert told == ["paper"]
    assert (field.value(), field.key.title) == ("paper", "from paper")
    assert field.key.accessibleName() == "How read, from paper"
    field.set_value("metal")
    assert told == ["paper"]
    assert field.key.title == "from metal by me"


def test_a_list_of_nothing_does_not_lie_over_the_page(look, stage):
    key = MenuKey(look, "nothing to choose from")
    stage(key, 300, 200)
    key.open()
    assert not [words for words in key.window().findChildren(WordList) if words.isVisible()]
