"""What Python must look for to throw it away is looked for while nobody waits, and in the window's own thread."""

from __future__ import annotations

import gc
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

if TYPE_CHECKING:
    from inspector.window.desk import Desk

EVERY_MS = 1_000


class Tidying(QObject):
    """From now until ``end`` it is done once a second, and whole when another machine is opened."""

    # By itself Python looks through all that there is whenever it has made much: in the middle of a touch, which it
    # then holds up, or in a thread beside the window, in which no widget may end.

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._every = QTimer(self)
        self._every.setInterval(EVERY_MS)
        self._every.timeout.connect(self.tidy)
        desk.opened.connect(self._soon)
        gc.disable()
        gc.freeze()  # what the program is made of stays, and need not be looked through
        self._every.start()

    def tidy(self) -> None:
        """What was made lately and is of no use is thrown away, as often as Python itself would do it."""
        made, young, middle = (count > most for count, most in zip(gc.get_count(), gc.get_threshold(), strict=True))
        if middle:
            gc.collect()
            gc.freeze()
        elif made:
            gc.collect(1 if young else 0)

    def _soon(self) -> None:
        QTimer.singleShot(0, self, self.tidy_all)

    def tidy_all(self) -> None:
        """All that is of no use any more is thrown away, as what belonged to the machine before."""
        gc.unfreeze()
        gc.collect()
        gc.freeze()

    def end(self) -> None:
        """Python does it by itself again."""
        self._every.stop()
        gc.unfreeze()
        gc.enable()
