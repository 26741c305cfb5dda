"""What every test starts from: folders of its own, the font that ships, no window left over."""

import os
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from inspector.resource import resource

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

FOLDERS = ("HOME", "USERPROFILE", "APPDATA", "LOCALAPPDATA", "XDG_DATA_HOME", "XDG_CONFIG_HOME",
           "XDG_CACHE_HOME", "XDG_STATE_HOME", "XDG_DOCUMENTS_DIR", "XDG_RUNTIME_DIR")  # fmt: skip


@pytest.fixture(autouse=True)
def own_folders(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Nothing a test does reaches the records of whoever runs it."""
    home = tmp_path_factory.mktemp("home")
    for name in FOLDERS:
        folder = home / name.lower()
        folder.mkdir(mode=0o700)
        monkeypatch.setenv(name, str(folder))
    monkeypatch.delenv("INSPECTOR_DATA", raising=False)
    return home


@pytest.fixture(autouse=True)
def no_window_left(request: pytest.FixtureRequest) -> Iterator[None]:
    """A window still shown when its test is over would disturb the next one."""
    yield
    if "qapp" not in request.fixturenames:
        return
    application = sys.modules["PySide6.QtWidgets"].QApplication.instance()
    left = [w for w in application.topLevelWidgets() if w.isVisible()] if application else []
    for widget in left:
        widget.close()
    assert not left, f"windows left open: {left}"


@pytest.fixture(scope="session")
def qapp(qapp):
    """The application with the font that ships, so that widths are the same on every machine."""
    from PySide6.QtGui import QFontDatabase

    for font in sorted(resource("fonts").glob("*.ttf")):
        assert QFontDatabase.addApplicationFont(str(font)) >= 0, f"{font.name} cannot be read"
    return qapp
