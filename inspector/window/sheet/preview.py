"""A PDF as it will print, page under page; QtPdf is loaded only when the first one is shown."""

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.look.inks import palette
from inspector.window.look.look import Look
from inspector.window.look.scroll import tame


class Preview(QWidget):
    """Shows the very bytes that are saved."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._view = None
        self._document = None
        self._bytes = QByteArray()
        self._buffer: QBuffer | None = None

    def show_pdf(self, pdf: bytes) -> int:
        """The pages of this PDF are shown; gives how many there are."""
        self._begin()
        old = self._buffer
        self._document.close()
        self._bytes = QByteArray(pdf)
        self._buffer = QBuffer(self._bytes)
        self._buffer.open(QIODevice.OpenModeFlag.ReadOnly)
        self._document.load(self._buffer)
        if old is not None:
            old.close()
        return self._document.pageCount()

    def _begin(self) -> None:
        if self._view is not None:
            return
        from PySide6.QtPdf import QPdfDocument
        from PySide6.QtPdfWidgets import QPdfView

        self._document = QPdfDocument(self)
        self._view = QPdfView(self)
        self._view.setAccessibleName(tr("The sheet as it will print"))
        self._view.setDocument(self._document)
        self._view.setPageMode(QPdfView.PageMode.MultiPage)
        self._view.setZoomMode(QPdfView.ZoomMode.FitToWidth)
        tame(self._view, self.look)
        self.look.changed.connect(self._dress)
        self._dress()
        self._box.addWidget(self._view)

    def _dress(self) -> None:
        """What lies round the pages is the tray of this look, not a dark frame."""
        inks = palette(self.look.inks)
        inks.setColor(inks.ColorRole.Dark, self.look.colour("tray"))
        self._view.setPalette(inks)
