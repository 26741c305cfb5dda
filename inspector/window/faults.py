"""A fault of the program itself: written down, and said in one sentence, while the window goes on."""

from __future__ import annotations

import sys
import traceback
from contextlib import suppress
from typing import TYPE_CHECKING

from inspector.texts import tr

if TYPE_CHECKING:
    from pathlib import Path
    from types import TracebackType

    from inspector.window.desk import Desk


class Faults:
    """From now until ``end`` what nobody caught is written into ``file``; each kind of fault is told once."""

    def __init__(self, desk: Desk, file: Path) -> None:
        self._desk, self._file = desk, file
        self._known: set[str] = set()
        self._before = sys.excepthook
        sys.excepthook = self.caught

    def caught(self, kind: type[BaseException], fault: BaseException, trace: TracebackType | None) -> None:
        """The fault is known from now on; one that comes with every painting is told but once."""
        words = "".join(traceback.format_exception(kind, fault, trace))
        if issubclass(kind, KeyboardInterrupt):
            self._before(kind, fault, trace)
        elif words not in self._known:
            self._known.add(words)
            self._write(words)
            self._desk.told.emit(tr(
                "Something in the program itself went wrong, and what you did just now may not have been done. "
                "All that was kept before is still kept. What went wrong is written down in {file}.",
                file=self._file,
            ))  # fmt: skip

    def _write(self, words: str) -> None:
        # A disk that is full, or a window without a console, is no reason to say nothing.
        with suppress(OSError), self._file.open("a", encoding="utf-8") as kept:
            kept.write(f"{self._desk.clock()}\n{words}\n")
        if sys.stderr is not None:
            with suppress(OSError):
                sys.stderr.write(words)

    def end(self) -> None:
        """What nobody caught goes the way it went before."""
        sys.excepthook = self._before
