"""A PDF as it will print, page under page; QtPdf is loaded only when the first one is shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.look.inks import palette
from inspector.window.look.scroll import tame

if TYPE_CHECKING:
    from PySide6.QtPdf import QPdfDocument
    from PySide6.QtPdfWidgets import QPdfView

    from inspector.window.look.look import Look


class Preview(QWidget):
    """Shows the very bytes that are saved."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._shown: tuple[QPdfDocument, QPdfView] | None = None
        self._bytes = QByteArray()
        self._buffer: QBuffer | None = None

    def show_pdf(self, pdf: bytes) -> int:
        """The pages of this PDF are shown; gives how many there are."""
        document, _ = self._shown or self._begin()
        old = self._buffer
        document.close()
        self._bytes = QByteArray(pdf)
        self._buffer = QBuffer(self._bytes)
        self._buffer.open(QIODevice.OpenModeFlag.ReadOnly)
        document.load(self._buffer)
        if old is not None:
            old.close()
        return document.pageCount()

    def show_nothing(self) -> None:
        """No page of what was shown is left."""
        if self._shown is not None:
            self._shown[0].close()
            self._bytes = QByteArray()

    def _begin(self) -> tuple[QPdfDocument, QPdfView]:
        from PySide6.QtPdf import QPdfDocument
        from PySide6.QtPdfWidgets import QPdfView

        document, view = QPdfDocument(self), QPdfView(self)
        view.setAccessibleName(tr("The sheet as it will print"))
        view.setDocument(document)
        view.setPageMode(QPdfView.PageMode.MultiPage)
        view.setZoomMode(QPdfView.ZoomMode.FitToWidth)
        tame(view, self.look)
        self._box.addWidget(view)
        self._shown = document, view
        self.look.changed.connect(self._dress)
        self._dress()
        return self._shown

    def _dress(self) -> None:
        """What lies round the pages is the tray of this look, not a dark frame."""
        if self._shown is not None:
            inks = palette(self.look.inks)
            inks.setColor(QPalette.ColorRole.Dark, self.look.colour("tray"))
            self._shown[1].setPalette(inks)
