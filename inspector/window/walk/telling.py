"""How to tell the forms apart: each form with its words, its years, its drawing and who says so."""

from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QImageReader, QPainter, QPaintEvent
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.profile.check_files import picture_path
from inspector.profile.expected import sources_of
from inspector.profile.items import Item, Variant
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.facts import FactRow
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.text import Text

WIDE_MM, HIGH_MM = 84.0, 59.0
PAPER = "#FBFAF6"  # the ground that drawings of profiles are made for


class Telling(Column):
    """Every form of the open item; a drawing that several forms share stands once."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk = desk

    def show_item(self, item: Item) -> None:
        """The forms of this item are shown."""
        self.clear()
        drawn: set[str] = set()
        for variant in item.variants:
            self._add_form(variant)
            path = picture_path(self.desk.folder, variant.picture) if variant.picture else None
            if path is not None and variant.picture not in drawn:
                drawn.add(variant.picture)
                self.add(Drawn(self.look, path, tr("Drawing: how to tell {name}", name=variant.name)), 2)

    def _add_form(self, variant: Variant) -> None:
        sources = sources_of(self.desk.profile, variant)
        best = sources[0] if sources else None
        second = ", ".join(part for part in (years_of(variant), tr(variant.origin.value), serials_of(variant)) if part)
        row = FactRow(
            self.look,
            variant.name,
            second=second,
            grade=best.grade if best else 0,
            kind=tr(best.kind.value) if best else tr("no source"),
            place=variant.at or (best.title if best else ""),
            opens=False,
        )
        self.add(row, 2)
        words = " ".join(part for part in (variant.tell, variant.note) if part)
        self.add(Text(self.look, words or tr("Nothing is documented to tell it by.")), 1)


class Drawn(Measured, QWidget):
    """A drawing or picture of the profile in its own shape, on light paper so that its ink shows in every scheme."""

    def __init__(self, look: Look, path: Path, name: str) -> None:
        super().__init__()
        self.look = look
        self.setAccessibleName(name)
        self._svg = QSvgRenderer(str(path)) if path.suffix.lower() == ".svg" else None
        self._image = QImage() if self._svg else _read(path)
        policy = QSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.updateGeometry)

    def _fitted(self, width: int) -> QSize:
        """The drawing's own shape within the room for it and this width, in pixels."""
        own = self._svg.defaultSize() if self._svg else self._image.size()
        room = QSize(min(width, self.look.grown(WIDE_MM)), self.look.grown(HIGH_MM))
        return own.scaled(room, Qt.AspectRatioMode.KeepAspectRatio) if not own.isEmpty() else QSize(1, 1)

    def sizeHint(self) -> QSize:
        """As large as it is shown where there is room."""
        return self._fitted(self.look.grown(WIDE_MM))

    def minimumSizeHint(self) -> QSize:
        """It gives way to whatever is narrower."""
        return QSize(1, 1)

    def hasHeightForWidth(self) -> bool:
        """It keeps its shape."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of its shape at this width."""
        return self._fitted(width).height()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws it."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), PAPER)
        if self._svg is not None:
            self._svg.render(painter, QRectF(self.rect()))
        elif not self._image.isNull():
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(self.rect(), self._image)
        painter.end()


def _read(path: Path) -> QImage:
    reader = QImageReader(str(path))
    reader.setAutoTransform(True)
    return reader.read()


def years_of(variant: Variant) -> str:
    """The variant's years as they are printed: "1952–54", "from 1955", or nothing."""
    if variant.years is None:
        return ""
    first, last = variant.years.first, variant.years.last
    if first and last:
        return str(first) if first == last else f"{first}–{last % 100:02d}"
    return tr("from {year}", year=first) if first else tr("to {year}", year=last) if last else ""


def serials_of(variant: Variant) -> str:
    """The serials of a running change, in words."""
    words = []
    for span in variant.serials:
        if span.first is not None and span.last is not None:
            words.append(tr("{place} {first} to {last}", place=span.place, first=span.first, last=span.last))
        elif span.first is not None:
            words.append(tr("from {place} {first}", place=span.place, first=span.first))
        elif span.last is not None:
            words.append(tr("to {place} {last}", place=span.place, last=span.last))
    return "; ".join(words)
