"""What may be loaded by what, seen in a fresh interpreter: no linter sees a hidden import."""

import os
import subprocess
import sys

import pytest
from PySide6.QtCore import QObject

from inspector.storage.library import Library
from tests.house.project import ROOT, loaded_after
from tests.record.steps import blank
from tests.storage.shelf import Clock, profile

CORE = (
    "profile", "record", "judgement", "sheet", "storage", "photo", "session", "demo", "handover", "cli", "texts",
    "sealing", "checked", "sheet.checking", "sheet.keys",
    "resource", "phone", "phone.server", "packing.pack", "packing.take", "packing.check", "checking", "revisit",
)  # fmt: skip
NOT_AT_START = ("reportlab", "PIL", "pillow_heif", "numpy", "scipy", "cv2", "pyhanko", "aiohttp", "segno", "pydantic",
                "PySide6.QtMultimedia", "PySide6.QtPdf", "PySide6.QtSvg", "PySide6.QtNetwork", "socket",
                "inspector.profile", "inspector.judgement", "inspector.sheet", "inspector.packing", "inspector.session",
                "inspector.record.model", "inspector.photo.copies", "inspector.storage.same",
                "inspector.storage.profiles", "inspector.window.visits", "inspector.window.machines.rest")  # fmt: skip
FIRST_PAINT = """
import sys
from pathlib import Path
from inspector import app
from inspector.window.machines.page import MachinesPage

def painted(page, event):
    if page.machines.rows.widgets():
        print("\\n".join(sorted(sys.modules)))
        app.application().quit()

MachinesPage.paintEvent = painted
sys.exit(app.main([]))
"""


@pytest.mark.parametrize("part", CORE)
def test_the_core_brings_no_qt_along(part):
    loaded = loaded_after(f"inspector.{part}")
    assert f"inspector.{part}" in loaded
    assert [name for name in loaded if name.startswith(("PySide6", "shiboken6"))] == []


def test_starting_loads_nothing_that_the_first_page_does_not_need():
    loaded = loaded_after("inspector.app")
    assert "PySide6.QtWidgets" in loaded
    assert [name for name in NOT_AT_START if name in loaded] == []


def test_the_first_paint_with_machines_in_it_needs_no_more(tmp_path):
    clock = Clock()
    with Library.open(tmp_path, clock) as library:
        library.create(blank(), profile(tmp_path))
    environment = {**os.environ, "INSPECTOR_DATA": str(tmp_path)}
    done = subprocess.run(
        [sys.executable, "-c", FIRST_PAINT], cwd=ROOT, env=environment, capture_output=True, text=True, check=True
    )
    loaded = set(done.stdout.split())
    assert "inspector.window.machines.page" in loaded
    assert [name for name in NOT_AT_START if name in loaded] == []


def test_qt_calls_that_return_nothing_keep_none_alive():
    # PySide6 6.12.0 under Python 3.11 drops one reference per call, until the interpreter aborts.
    thing = QObject()
    before = sys.getrefcount(None)
    for _ in range(200):
        thing.setObjectName("x")
    assert abs(sys.getrefcount(None) - before) < 20
