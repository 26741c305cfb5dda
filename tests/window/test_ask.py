"""What the system's dialogs are asked: photographs as cameras name them, where they were found last."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QFileDialog, QWidget

from inspector.window.ask import Ask


@pytest.fixture
def ask(qtbot):
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    return Ask(window)


def dialog():
    return next(w for w in QApplication.topLevelWidgets() if isinstance(w, QFileDialog) and w.isVisible())


def pick(qtbot, ask, *files):
    """These files are picked in the dialog; gives what was answered."""
    answers = []
    ask.photographs(answers.append)
    open_ = dialog()
    folder = open_.directory().absolutePath()
    open_.filesSelected.emit([str(file) for file in files])
    open_.reject()
    qtbot.waitUntil(lambda: not open_.isVisible())
    return folder, answers[0] if answers else None


def test_the_second_time_it_begins_where_the_first_ended(qtbot, ask, tmp_path):
    card = tmp_path / "card"
    card.mkdir()
    file = card / "IMG_0001.JPG"
    file.touch()
    _, answered = pick(qtbot, ask, file)
    assert answered == [file]
    folder, _ = pick(qtbot, ask, file)
    assert Path(folder) == card


@pytest.mark.parametrize("ending", ["jpg", "JPG", "heic", "HEIC", "png", "webp", "TIF"])
def test_endings_are_known_in_small_letters_and_in_capitals(qtbot, ask, ending):
    ask.photographs(lambda files: None)
    open_ = dialog()
    assert f"*.{ending}" in open_.nameFilters()[0].replace("(", " ").replace(")", " ").split()
    open_.reject()
    qtbot.waitUntil(lambda: not open_.isVisible())
