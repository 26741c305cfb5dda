"""The list of photographs: as many as there are, of which only those in sight cost anything."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import (
    QAbstractListModel,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QRect,
    QRectF,
    QSize,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QFocusEvent, QFontMetricsF, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import QAbstractItemView, QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from inspector.texts import tr
from inspector.window.look.inks import palette
from inspector.window.look.press import TARGET
from inspector.window.look.scroll import tame
from inspector.window.photographs.entries import Entry, aside_of, state_words

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.storage.photographs import State
    from inspector.window.look.look import Look
    from inspector.window.photographs.loader import Loader

Index = QModelIndex | QPersistentModelIndex
THUMB_WIDE, THUMB_HIGH = 20.0, 13.5
EDGE, ABOVE, BETWEEN, BAR, RING = 5.0, 1.3, 3.0, 1.5, 0.6
TOGETHER_MS = 30
ENTRY = Qt.ItemDataRole.UserRole


class Photos(QAbstractListModel):
    """One row a photograph; asking for a row fails for none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.entries: list[Entry] = []
        self.states: Mapping[str, State] = {}

    def show(self, entries: list[Entry]) -> None:
        """The rows are these."""
        self.beginResetModel()
        self.entries = entries
        self.endResetModel()

    def rowCount(self, parent: Index | None = None) -> int:
        """As many as there are photographs."""
        return 0 if parent is not None and parent.isValid() else len(self.entries)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The entry, or the words of the row."""
        row = index.row()
        if not 0 <= row < len(self.entries):
            return None
        entry = self.entries[row]
        if role == ENTRY:
            return entry
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{entry.group}, {entry.second}"
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return self._spoken(entry, row)
        return None

    def _spoken(self, entry: Entry, row: int) -> str:
        place = tr("photograph {n} of {all}", n=row + 1, all=len(self.entries))
        state = self.states.get(entry.photograph.sha256)
        words = (place, entry.group, entry.second, entry.third, aside_of(entry.photograph, state))
        return ", ".join(word for word in words if word)

    def row_of(self, photograph: str) -> int:
        """The row of the photograph with this id, or -1."""
        return next((n for n, e in enumerate(self.entries) if e.photograph.id == photograph), -1)

    def touch(self) -> None:
        """Every row that is seen is painted again."""
        if self.entries:
            self.dataChanged.emit(self.index(0), self.index(len(self.entries) - 1))


class Painting(QStyledItemDelegate):
    """Paints a row: the small picture, three lines beside it, what is to be said at the right."""

    def __init__(self, look: Look, loader: Loader, view: PhotoView) -> None:
        super().__init__(view)
        self.look, self.loader, self.view = look, loader, view
        self._metrics: dict[tuple[str, bool], QFontMetricsF] = {}
        look.changed.connect(self._metrics.clear)

    def metrics(self, step: str, heavy: bool) -> QFontMetricsF:
        """The measures of the font of this step."""
        key = (step, heavy)
        if key not in self._metrics:
            self._metrics[key] = QFontMetricsF(self.look.font(step, heavy))
        return self._metrics[key]

    def high(self) -> int:
        """The height of every row, in pixels."""
        look = self.look
        lines = look.leading("text") + 2 * look.leading("small")
        return max(look.least(TARGET), round(max(lines, look.grown(THUMB_HIGH)) + 2 * look.grown(ABOVE)))

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """As wide as the list; all are as high."""
        return QSize(self.view.viewport().width(), self.high())

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draws the row in the inks of the look."""
        entry, look = index.data(ENTRY), self.look
        if not isinstance(entry, Entry):
            return
        rect: QRect = option.rect  # type: ignore[attr-defined]
        state = option.state  # type: ignore[attr-defined]
        picked = bool(state & QStyle.StateFlag.State_Selected)
        painter.fillRect(rect, look.colour("tray" if picked else "paper"))
        if picked:
            painter.fillRect(QRect(rect.x(), rect.y(), look.px(BAR), rect.height()), look.colour("ink"))
        thick = look.px(0.35 if entry.first and index.row() else 0.22)
        painter.fillRect(
            QRect(rect.x(), rect.y(), rect.width(), thick), look.colour("ink" if entry.first else "rule")
        )
        room = self._picture(painter, rect, entry)
        self._lines(painter, room, entry, picked)
        if state & QStyle.StateFlag.State_HasFocus and look.by_keyboard and self.view.hasFocus():
            self._ring(painter, rect)

    def _picture(self, painter: QPainter, rect: QRect, entry: Entry) -> QRect:
        """The small picture, or tray in its place; gives the room right of it."""
        look = self.look
        wide, high = look.grown(THUMB_WIDE), look.grown(THUMB_HIGH)
        box = QRect(rect.x() + look.px(EDGE), rect.y() + (rect.height() - high) // 2, wide, high)
        image = self.loader.image(entry.photograph.sha256)
        if image is not None and not image.isNull():
            painter.drawImage(box, image)
        else:
            painter.fillRect(box, look.colour("tray"))
            if image is not None:
                painter.setPen(QPen(look.colour("line"), look.mm(0.3)))
                painter.drawLine(box.topLeft(), box.bottomRight())
        painter.setPen(look.colour("line"))
        painter.drawRect(box.adjusted(0, 0, -1, -1))
        left = box.right() + look.px(BETWEEN)
        return QRect(left, rect.y(), rect.right() - left - look.px(EDGE), rect.height())

    def _lines(self, painter: QPainter, room: QRect, entry: Entry, picked: bool) -> None:
        look, one = self.look, entry.photograph
        state = self.view.photos.states.get(one.sha256)
        trouble = state_words(state)
        aside = aside_of(one, state)
        lines = [
            (entry.group, "text", entry.first or picked, "ink"),
            (entry.second, "small", False, "ink"),
            (entry.third, "small", False, "soft"),
        ]
        top = room.y() + (room.height() - look.leading("text") - 2 * look.leading("small")) / 2
        for n, (words, step, heavy, ink) in enumerate(lines):
            high = look.leading(step)
            line = QRectF(room.x(), top, room.width(), high)
            if n == 1 and aside:
                line = self._aside(painter, line, aside, bool(trouble))
            self._line(painter, line, words, step, heavy, ink)
            top += high

    def _aside(self, painter: QPainter, line: QRectF, words: str, heavy: bool) -> QRectF:
        """The words at the right; gives the room left of them."""
        wide = min(self.metrics("small", heavy).horizontalAdvance(words) + 2, line.width() * 0.6)
        place = QRectF(line.right() - wide, line.y(), wide, line.height())
        self._line(painter, place, words, "small", heavy, "ink" if heavy else "soft")
        return line.adjusted(0, 0, -wide - self.look.mm(2), 0)

    def _line(self, painter: QPainter, room: QRectF, words: str, step: str, heavy: bool, ink: str) -> None:
        painter.setFont(self.look.font(step, heavy))
        painter.setPen(self.look.colour(ink))
        shown = self.metrics(step, heavy).elidedText(words, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine, shown)

    def _ring(self, painter: QPainter, rect: QRect) -> None:
        wide = self.look.mm(RING)
        painter.setPen(QPen(self.look.colour("focus"), wide))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(rect).adjusted(wide, wide, -wide, -wide))


class PhotoView(QListView):
    """The rows, moved by finger, wheel and keys; ``picked`` tells that others are picked, ``opened`` of Enter."""

    picked = Signal()
    opened = Signal()

    def __init__(self, look: Look, loader: Loader, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.loader = look, loader
        self.photos = Photos(self)
        self.painting = Painting(look, loader, self)
        self.setModel(self.photos)
        self.setItemDelegate(self.painting)
        self.setUniformItemSizes(True)
        self.setLayoutMode(QListView.LayoutMode.Batched)
        self.setBatchSize(200)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setAccessibleName(tr("Photographs"))
        self.setMinimumHeight(look.least(TARGET))
        self.bar = tame(self, look)
        self._soon = QTimer(self)  # several that come at once are painted once
        self._soon.setSingleShot(True)
        self._soon.setInterval(TOGETHER_MS)
        self._soon.timeout.connect(self.viewport().update)
        loader.came.connect(self._came)
        look.changed.connect(self.restyle)
        self.selectionModel().selectionChanged.connect(lambda *_: self.picked.emit())
        self.restyle()

    def restyle(self) -> None:
        """Rows and pictures are of the size and inks that hold now."""
        self.setPalette(palette(self.look.inks))
        self.viewport().setPalette(palette(self.look.inks))
        self.verticalScrollBar().setSingleStep(self.painting.high() // 3)
        self.loader.set_size(QSize(self.look.grown(THUMB_WIDE), self.look.grown(THUMB_HIGH)) * self.devicePixelRatioF())
        self.scheduleDelayedItemsLayout()
        self.viewport().update()

    def show_entries(self, entries: list[Entry], *, alike: bool = False) -> None:
        """The rows are these; what was picked and is still there stays picked, and so does where one is.

        ``alike`` says that each row is of the photograph that it was of before.
        """
        if alike and entries is not self.photos.entries:
            self.photos.entries = entries
            self.photos.touch()
        if entries is self.photos.entries:
            self.picked.emit()
            return
        had, at = {p.id for p in self.picked_photographs()}, self.verticalScrollBar().value()
        old = self.currentIndex().row()
        model = self.selectionModel()
        model.blockSignals(True)
        self.photos.show(entries)
        rows = [n for n, e in enumerate(entries) if e.photograph.id in had] if had else []
        for row in rows:
            model.select(self.photos.index(row), QItemSelectionModel.SelectionFlag.Select)
        if entries and old >= 0:
            row = rows[0] if rows else min(old, len(entries) - 1)
            model.setCurrentIndex(self.photos.index(row), QItemSelectionModel.SelectionFlag.NoUpdate)
        model.blockSignals(False)
        self.verticalScrollBar().setValue(at)
        self.viewport().update()
        self.picked.emit()

    def picked_photographs(self) -> list[Any]:
        """The photographs that are picked, in the order of the list."""
        rows = sorted(index.row() for index in self.selectionModel().selectedIndexes())
        return [self.photos.entries[row].photograph for row in rows if row < len(self.photos.entries)]

    def pick(self, photograph: str) -> None:
        """This photograph alone is picked, and in sight."""
        row = self.photos.row_of(photograph)
        if row >= 0:
            self.setCurrentIndex(self.photos.index(row))
            self.scrollTo(self.photos.index(row))

    def pick_several(self, on: bool) -> None:
        """Each touch adds a row to those picked or takes it away, or picks it alone as ever."""
        kinds = QAbstractItemView.SelectionMode
        self.setSelectionMode(kinds.MultiSelection if on else kinds.ExtendedSelection)

    def _came(self, _: str) -> None:
        if not self._soon.isActive():
            self._soon.start()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens what is picked; all else is as in every list."""
        self.look.by_keyboard = True
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.opened.emit()
            return
        super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The first row is where one is, if none was."""
        if event.reason() in (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason):
            self.look.by_keyboard = True
        super().focusInEvent(event)
        if not self.currentIndex().isValid() and self.photos.entries:
            none = QItemSelectionModel.SelectionFlag.NoUpdate
            self.selectionModel().setCurrentIndex(self.photos.index(0), none)
        self.viewport().update()
