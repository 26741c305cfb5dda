"""Questions that need the system's own dialogs, behind one small object that tests replace."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QStandardPaths, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog, QWidget

from inspector.texts import tr

_ENDINGS = ("jpg", "jpeg", "png", "webp", "heic", "heif", "tif", "tiff")
# Cameras write them in capitals, and some systems' dialogs tell the two apart.
PICTURES = " ".join(f"*.{ending}" for lower in _ENDINGS for ending in (lower, lower.upper()))


class Ask:
    """Asks for files and shows folders; each answer comes back through a callable, nothing blocks."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self.parent = parent
        self._pictures = ""  # the folder from which photographs were picked last

    def photographs(self, answer: Callable[[list[Path]], None]) -> None:
        """The photographs that the person picks; nothing is called when they pick none."""
        dialog = QFileDialog(self.parent, tr("Photographs"))
        dialog.setFileMode(QFileDialog.FileMode.ExistingFiles)
        dialog.setOption(QFileDialog.Option.HideNameFilterDetails)
        dialog.setNameFilters([tr("Photographs") + f" ({PICTURES})", tr("All files") + " (*)"])
        home = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.PicturesLocation)
        dialog.setDirectory(self._pictures or home)
        dialog.filesSelected.connect(lambda names: self._picked(names, answer))
        _open(dialog)

    def _picked(self, names: list[str], answer: Callable[[list[Path]], None]) -> None:
        if names:
            self._pictures = str(Path(names[0]).parent)
        answer([Path(name) for name in names])

    def where_to_save(self, name: str, answer: Callable[[Path], None]) -> None:
        """Where the person wants a file to be written; the end of its name says of which kind."""
        kind = Path(name).suffix.removeprefix(".") or "pdf"
        dialog = QFileDialog(self.parent, tr("Save the sheet"), name, f"{kind.upper()} (*.{kind})")
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix(kind)
        dialog.fileSelected.connect(lambda chosen: answer(Path(chosen)))
        _open(dialog)

    def a_sheet(self, answer: Callable[[Path], None]) -> None:
        """The sheet or bag that the person picks to be checked."""
        dialog = QFileDialog(self.parent, tr("Check a sheet or bag"))
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.setNameFilters([tr("Sheets and bags") + " (*.pdf *.zip)", tr("All files") + " (*)"])
        dialog.fileSelected.connect(lambda chosen: answer(Path(chosen)))
        _open(dialog)

    def where_to_pack(self, name: str, answer: Callable[[Path], None]) -> None:
        """Where the person wants a bag to be written."""
        dialog = QFileDialog(self.parent, tr("Pack the whole file"), name, tr("Bag") + " (*.zip)")
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix("zip")
        dialog.fileSelected.connect(lambda chosen: answer(Path(chosen)))
        _open(dialog)

    def a_bag(self, answer: Callable[[Path], None]) -> None:
        """The bag that the person picks."""
        dialog = QFileDialog(self.parent, tr("A bag"))
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.setNameFilters([tr("Bag") + " (*.zip)", tr("All files") + " (*)"])
        dialog.fileSelected.connect(lambda chosen: answer(Path(chosen)))
        _open(dialog)

    def a_folder(self, words: str, answer: Callable[[Path], None]) -> None:
        """A folder that the person picks; ``words`` say what for."""
        dialog = QFileDialog(self.parent, words)
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.fileSelected.connect(lambda chosen: answer(Path(chosen)))
        _open(dialog)

    def profile_folder(self, answer: Callable[[Path], None]) -> None:
        """The folder of a profile that the person picks."""
        dialog = QFileDialog(self.parent, tr("Folder of a profile"))
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.fileSelected.connect(lambda chosen: answer(Path(chosen)))
        _open(dialog)

    def show_folder(self, folder: Path) -> None:
        """The folder is shown in the system's own window."""
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(folder)))


def _open(dialog: QFileDialog) -> None:
    dialog.finished.connect(dialog.deleteLater)
    dialog.open()
