"""Puts the parts together and opens the window; the only place that knows them all."""

from __future__ import annotations

import argparse
import faulthandler
import os
import sys
from contextlib import suppress
from math import isfinite
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEventLoop, QSettings, Qt, QTimer
from PySide6.QtWidgets import QApplication, QMessageBox, QWidget

from inspector.clock import now
from inspector.resource import sample_profiles
from inspector.storage.library import Library
from inspector.storage.paths import data_folder
from inspector.storage.trouble import Damaged, StorageTrouble
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.faults import Faults
from inspector.window.frame import Window
from inspector.window.look.look import Look
from inspector.window.machines.page import MachinesPage
from inspector.window.openlog import BeforeLeaving, OpenLog
from inspector.window.tidying import Tidying

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.window.ask import Ask

SIZES = {"wide": (1280, 800), "tall": (800, 1280)}
SCHEMES = ("light", "dark", "sunlight")
PICTURE_PX_PER_MM = 4.7
PREVIEW_MS = 400


def build(
    folder: Path,
    look: Look,
    settings: QSettings,
    *,
    clock: Callable[[], str] = now,
    ask: Ask | None = None,
    roots: tuple[Path, ...] | None = None,
) -> Window:
    """The window over the library in ``folder``. Raises StorageTrouble when the library cannot be used."""
    library = Library.open(folder, clock)
    desk = Desk(library, look, roots or (sample_profiles(), folder / "my-profiles"), clock, ask)
    pages: list[tuple[str, str, Callable[[], QWidget]]] = [
        ("machines", tr("Machines"), lambda: MachinesPage(desk, lambda: _demo(library))),
        ("claim", tr("Claim"), lambda: _claim(desk)),
        ("numbers", tr("Numbers"), lambda: _numbers(desk)),
        ("walk", tr("Walk"), lambda: _walk(desk)),
        ("photographs", tr("Photographs"), lambda: _photographs(desk)),
        ("result", tr("Result"), lambda: _result(desk)),
        ("money", tr("Money"), lambda: _money(desk)),
        ("sheet", tr("Sheet"), lambda: _sheet(desk)),
    ]
    OpenLog(desk)
    BeforeLeaving(desk)
    window = Window(desk, pages, settings)
    desk.ask.parent = window
    if library.notice is not None:
        desk.told.emit(tr(library.notice))
    return window


def _claim(desk: Desk) -> QWidget:
    from inspector.window.claim.page import ClaimPage

    return ClaimPage(desk)


def _numbers(desk: Desk) -> QWidget:
    from inspector.window.numbers.page import NumbersPage

    return NumbersPage(desk)


def _walk(desk: Desk) -> QWidget:
    from inspector.window.walk.page import WalkPage

    return WalkPage(desk)


def _photographs(desk: Desk) -> QWidget:
    from inspector.window.photographs.page import PhotographsPage

    return PhotographsPage(desk)


def _result(desk: Desk) -> QWidget:
    from inspector.window.result.page import ResultPage

    return ResultPage(desk)


def _money(desk: Desk) -> QWidget:
    from inspector.window.money.page import MoneyPage

    return MoneyPage(desk)


def _sheet(desk: Desk) -> QWidget:
    from inspector.window.sheet.page import SheetPage

    return SheetPage(desk)


def _demo(library: Library) -> str:
    from inspector.demo import put_demo

    return put_demo(library)


def application() -> QApplication:
    """The one application, named so that its settings are found again."""
    found = QApplication.instance()
    app = found if isinstance(found, QApplication) else QApplication(sys.argv[:1])
    app.setApplicationName("inspector")
    app.setApplicationDisplayName(tr("Inspector"))
    app.setOrganizationName("inspector")
    return app


def main(argv: list[str] | None = None) -> int:
    """The window is open until it is closed; 1 when it cannot open, said in one sentence."""
    options = _options(argv)
    app = application()
    if options.pictures:
        return pictures(options.pictures)
    folder = data_folder()
    settings = QSettings()
    look = Look(str(settings.value("scheme", "system")), _scale(settings))
    look.dress(app)
    window = open_window(folder, look, settings)
    if window is None:
        return 1
    _watch_crashes(folder)
    faults, tidying = Faults(window.desk, folder / "faults.log"), Tidying(window.desk)
    if options.record:
        window.desk.open(options.record, "result")
    window.appear()
    look.follow(window)
    code = app.exec()
    tidying.end()
    faults.end()
    window.desk.library.close()
    return code


def open_window(folder: Path, look: Look, settings: QSettings) -> Window | None:
    """The window over the library; None where it cannot be opened, said in one sentence, or the person opens nothing.

    Where the library is damaged it is asked which of its backups to go on from.
    """
    try:
        return build(folder, look, settings)
    except Damaged as trouble:
        words = _recovered(folder, look, trouble)
        if not words:
            return None
    except StorageTrouble as trouble:
        QMessageBox.critical(None, tr("Inspector"), tr(trouble.said))
        return None
    window = open_window(folder, look, settings)
    if window is not None:
        window.desk.told.emit(words)
    return window


def _recovered(folder: Path, look: Look, trouble: Damaged) -> str:
    """What stands in the place of the damaged library now, in a sentence; empty where all is as it was."""
    from inspector.window.machines.recovery import Recovery

    dialog = Recovery(look, folder, trouble, now())
    dialog.exec()
    words = dialog.done_words
    dialog.deleteLater()
    return words


def _options(argv: list[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="inspector.app", description="The window of the inspector.")
    parser.add_argument("--record", help="open this record")
    parser.add_argument("--pictures", type=Path, metavar="FOLDER", help="write pictures of the pages and end")
    return parser.parse_args(argv)


def _scale(settings: QSettings) -> float:
    """The size of type that was chosen; the plain one where none was, or where what is kept is no number."""
    try:
        scale = float(str(settings.value("text_scale", 1.0)))
    except ValueError:
        return 1.0
    return scale if isfinite(scale) else 1.0


def _watch_crashes(folder: Path) -> None:
    """A crash below Python leaves its trace in a file, if one can be written."""
    with suppress(OSError):
        trace = (folder / "crash.log").open("a", encoding="utf-8")
        faulthandler.enable(trace)


def pictures(to: Path) -> int:
    """Pictures of every page with the demo machine, in two shapes and three schemes, are in that folder."""
    import tempfile

    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    to.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as scratch:
        home = Path(scratch)
        for scheme in SCHEMES:
            look = Look(scheme, px_per_mm=PICTURE_PX_PER_MM)
            look.dress(application())
            settings = QSettings(str(home / "settings.ini"), QSettings.Format.IniFormat)
            window = build(home / "library", look, settings)
            for shape, size in SIZES.items():
                _shoot(window, to, f"{shape}-{scheme}", size)
            window.close()
            window.desk.library.close()
    return 0


def _shoot(window: Window, to: Path, name: str, size: tuple[int, int]) -> None:
    window.desk.close()
    window.resize(*size)
    window.setAttribute(Qt.WidgetAttribute.WA_DontShowOnScreen)
    window.show()
    window.show_page("machines")
    _settle(window)
    window.grab().save(str(to / f"machines-{name}.png"))
    window.desk.open(_demo(window.desk.library))
    for page in window.pages:
        window.show_page(page)
        _settle(window)
        window.grab().save(str(to / f"{page}-{name}.png"))


def _settle(window: Window) -> None:
    """Pictures that load beside the window are there."""
    for _ in range(20):
        window.desk.pool.waitForDone(2000)
        QApplication.processEvents()
    # The preview draws its pages in a thread of its own that tells nobody when it is done.
    loop = QEventLoop()
    QTimer.singleShot(PREVIEW_MS, loop.quit)
    loop.exec()


if __name__ == "__main__":
    sys.exit(main())
