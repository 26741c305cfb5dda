"""What may be loaded by what, seen in a fresh interpreter: no linter sees a hidden import."""

import sys

import pytest
from PySide6.QtCore import QObject

from tests.house.project import loaded_after

CORE = (
    "profile", "record", "judgement", "sheet", "storage", "photo", "session", "demo", "handover", "cli", "texts",
    "sealing", "checked", "sheet.checking", "sheet.keys",
    "resource", "phone", "phone.server", "packing.pack", "packing.take", "packing.check", "checking", "revisit",
)  # fmt: skip
NOT_AT_START = ("reportlab", "PIL", "pillow_heif", "numpy", "scipy", "cv2", "pyhanko", "aiohttp", "segno",
                "PySide6.QtMultimedia", "PySide6.QtPdf")  # fmt: skip


@pytest.mark.parametrize("part", CORE)
def test_the_core_brings_no_qt_along(part):
    loaded = loaded_after(f"inspector.{part}")
    assert f"inspector.{part}" in loaded
    assert [name for name in loaded if name.startswith(("PySide6", "shiboken6"))] == []


def test_starting_loads_nothing_that_the_first_page_does_not_need():
    loaded = loaded_after("inspector.app")
    assert "PySide6.QtWidgets" in loaded
    assert [name for name in NOT_AT_START if name in loaded] == []


def test_qt_calls_that_return_nothing_keep_none_alive():
    # PySide6 6.12.0 under Python 3.11 drops one reference per call, until the interpreter aborts.
    thing = QObject()
    before = sys.getrefcount(None)
    for _ in range(200):
        thing.setObjectName("x")
    assert abs(sys.getrefcount(None) - before) < 20
