"""A fault of the program is written down and said; settings that make no sense do not keep the window shut."""

import sys

import pytest
from PySide6.QtCore import QSettings

from inspector.app import _scale, _watch_crashes
from inspector.window.faults import Faults


@pytest.fixture
def faults(house, tmp_path):
    house.build()
    before = sys.excepthook
    made = Faults(house.desk, tmp_path / "faults.log")
    yield made
    made.end()
    assert sys.excepthook is before


def fault(words):
    try:
        raise ZeroDivisionError(words)
    except ZeroDivisionError as caught:
        return type(caught), caught, caught.__traceback__


def test_a_fault_is_written_down_and_said_in_one_sentence(house, faults, tmp_path, capsys):
    sys.excepthook(*fault("the first"))
    assert "the first" in (tmp_path / "faults.log").read_text("utf-8")
    assert "the first" in capsys.readouterr().err
    assert "faults.log" in house.says()
    assert "Traceback" not in house.says()


def test_a_fault_that_comes_again_and_again_is_told_once(house, faults, tmp_path, capsys):
    for _ in range(50):
        sys.excepthook(*fault("each time"))
    sys.excepthook(*fault("another"))
    assert len(house.told) == 2
    assert (tmp_path / "faults.log").read_text("utf-8").count("ZeroDivisionError: each time") == 1
    capsys.readouterr()


def test_a_fault_is_said_where_nothing_can_be_written(house, tmp_path, monkeypatch):
    house.build()
    monkeypatch.setattr(sys, "stderr", None)  # as in a window without a console
    made = Faults(house.desk, tmp_path / "no such folder" / "faults.log")
    sys.excepthook(*fault("unwritten"))
    made.end()
    assert "went wrong" in house.says()


@pytest.mark.parametrize(
    ("kept", "scale"), [("1.5", 1.5), ("large", 1.0), ("", 1.0), ("nan", 1.0), ("inf", 1.0), (None, 1.0)]
)
def test_a_size_of_type_that_is_no_number_is_the_plain_one(tmp_path, kept, scale):
    settings = QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat)
    if kept is not None:
        settings.setValue("text_scale", kept)
    assert _scale(settings) == scale


def test_where_no_trace_of_a_crash_can_be_left_the_window_opens_all_the_same(tmp_path):
    _watch_crashes(tmp_path / "not there")
