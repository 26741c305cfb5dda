"""Photographs dropped on a widget, or pasted into it."""

from __future__ import annotations

from abc import abstractmethod
from typing import TYPE_CHECKING

from PySide6.QtGui import QGuiApplication

from inspector.texts import tr
from inspector.window.intake import sources_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QDragEnterEvent, QDropEvent

    from inspector.photo.intake import Source
    from inspector.window.desk import Desk


class TakesPhotographs:
    """Before the QWidget in a class: files and pictures may be dropped on it and pasted; all come to ``take_in``."""

    desk: Desk

    @abstractmethod
    def take_in(self, sources: Sequence[Source]) -> None:
        """These photographs are wanted here."""

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and pictures may be dropped."""
        if sources_of(event.mimeData()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """What is dropped is taken in."""
        event.acceptProposedAction()
        self.take_in(sources_of(event.mimeData()))

    def paste_now(self) -> None:
        """What the clipboard holds is taken in, or a sentence says that it holds no picture."""
        sources = sources_of(QGuiApplication.clipboard().mimeData())
        if sources:
            self.take_in(sources)
        else:
            self.desk.told.emit(tr("There is no photograph to paste. Copy a picture or a file first."))
