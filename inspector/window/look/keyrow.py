"""Keys beside one another that wrap to the room there is, and keys of which some are held."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import ceil

from PySide6.QtCore import QEvent, QObject, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.window.look.keys import Key, Option, keys_of
from inspector.window.look.look import Look
from inspector.window.look.measured import Places, Placing, height_at, measured
from inspector.window.look.scroll import bring_into_sight

BETWEEN = 2.0  # between keys, in millimetres
FITS = ("even", "flow", "fill")


class KeyRow(Placing, QWidget):
    """Keys (or other widgets) in reading order, which is their tab order, wrapped into lines.

    ``fit`` "even" gives all one width, "flow" leaves each its own, "fill" widens them to the edge,
    to one width where their text allows it.
    """

    def __init__(
        self, look: Look, keys: Iterable[QWidget] = (), *, fit: str = "even",
        gap: float = BETWEEN, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        if fit not in FITS:
            raise ValueError(f"Keys fit even, flow or fill, not {fit!r}.")
        self.look, self._fit, self._gap = look, fit, gap
        self.keys: list[QWidget] = []
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.settle_soon)
        self.set_keys(keys)

    def set_keys(self, keys: Iterable[QWidget]) -> None:
        """The row holds these and no others; those that left are deleted."""
        wanted = list(keys)
        if wanted == self.keys:
            return
        for key in self.keys:
            if key not in wanted:
                key.hide()
                self._let_go(key)
        stood = set(pairwise(self.keys))
        self.keys = wanted
        for before, key in zip([None, *wanted], wanted, strict=False):
            if key.parent() is not self:
                key.setParent(self)
            if before is not None and (before, key) not in stood:
                QWidget.setTabOrder(before, key)
        for key in wanted:
            key.show()
        self.settle_soon()

    def _let_go(self, key: QWidget) -> None:
        """What left the row is of no more use."""
        key.deleteLater()

    def _between(self) -> int:
        return self.look.px(self._gap) if self._gap else 0

    def _standing(self) -> list[QWidget]:
        return [key for key in self.keys if not key.isHidden()]

    def _lines(self, width: int) -> list[list[tuple[QWidget, int]]]:
        """The keys of each line with the width of each, at this width of the row."""
        gap, shown = self._between(), self._standing()
        if self._fit == "even":
            return _even_lines(shown, width, gap)
        return _own_lines(shown, width, gap, self._fit == "fill")

    @measured
    def places_at(self, width: int) -> Places:
        """Where each key stands at this width, and the height of all of them."""
        gap, top = self._between(), 0
        places: list[tuple[QWidget, QRect]] = []
        for line in self._lines(width):
            high = max(height_at(key, wide) for key, wide in line)
            left = 0
            for key, wide in line:
                places.append((key, QRect(left, top, wide, high)))
                left += wide + gap
            top += high + gap
        return places, max(top - gap, 0)

    @measured
    def sizeHint(self) -> QSize:
        """The width at which all stand on one line."""
        each = [key.sizeHint().width() for key in self._standing()]
        gaps = self._between() * max(len(each) - 1, 0)
        wide = (max(each) * len(each) if self._fit == "even" and each else sum(each)) + gaps
        return QSize(wide, self.heightForWidth(wide))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width at which the widest stands alone on its line."""
        return QSize(max((key.minimumSizeHint().width() for key in self._standing()), default=0), 0)


def _natural(key: QWidget) -> int:
    """The width at which nothing in it wraps; its height there is nobody's concern."""
    return key.natural() if isinstance(key, Key) else key.sizeHint().width()


def _even_lines(keys: list[QWidget], width: int, gap: int) -> list[list[tuple[QWidget, int]]]:
    """Lines of equally many keys of one width, as many a line as fit without wrapping their text."""
    if not keys:
        return []
    widest = max(_natural(key) for key in keys)
    fitting = min(max((width + gap) // (widest + gap), 1), len(keys))
    count = ceil(len(keys) / ceil(len(keys) / fitting))
    lines = [keys[n : n + count] for n in range(0, len(keys), count)]
    edges = [round(n * (width + gap) / count) for n in range(count + 1)]
    wides = [max(edges[n + 1] - edges[n] - gap, 1) for n in range(count)]
    return [list(zip(line, wides, strict=False)) for line in lines]


def _own_lines(keys: list[QWidget], width: int, gap: int, fill: bool) -> list[list[tuple[QWidget, int]]]:
    """Lines of keys of their own width; the last key takes what rounding leaves when they fill."""
    lines: list[list[tuple[QWidget, int]]] = []
    used = 0
    for key in keys:
        wide = min(_natural(key), width)
        if lines and used + gap + wide <= width:
            lines[-1].append((key, wide))
            used += gap + wide
        else:
            lines.append([(key, wide)])
            used = wide
    return [_widened(line, width, gap) for line in lines] if fill else lines


def _widened(line: list[tuple[QWidget, int]], width: int, gap: int) -> list[tuple[QWidget, int]]:
    """The line as wide as its room: equal widths, but none below what it takes by itself."""
    left, room = list(line), width - gap * (len(line) - 1)
    wides: dict[QWidget, int] = {}
    while left:
        share = room // len(left)
        wider = [(key, wide) for key, wide in left if wide > share]
        for key, wide in wider or left:
            wides[key] = wide if wider else share
        room -= sum(wides[key] for key, _ in wider or left)
        left = [(key, wide) for key, wide in left if key not in wides]
    wides[line[-1][0]] += max(room, 0)
    return [(key, wides[key]) for key, _ in line]


_STEPS = {
    Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1,
}  # fmt: skip


class ChoiceKeys(KeyRow):
    """Keys of which one, or with ``many`` several, are held as "chosen" or "kept".

    Arrows move the focus, Space or Enter picks. ``picked(id)`` tells of each pick by the user,
    ``changed(ids)`` of all that are held after it. Setting from outside emits neither.
    """

    picked = Signal(str)
    changed = Signal(list)

    def __init__(
        self, look: Look, options: Sequence[Option] = (), *, many: bool = False,
        held: str = "chosen", may_clear: bool = False, fit: str = "even",
        parent: QWidget | None = None, **how: object,
    ) -> None:  # fmt: skip
        self.many, self._held, self._may_clear, self._how = many, held, may_clear or many, how
        self._by_id: dict[str, Key] = {}
        self._spare: list[Key] = []  # made once, not needed now
        super().__init__(look, fit=fit, parent=parent)
        self.set_options(options)

    def set_options(self, options: Sequence[Option]) -> None:
        """There is one key for each option, and none is held; keys that are there say the new words."""
        all_made = [*self._by_id.values(), *self._spare]
        had, self._spare = all_made[: len(options)], all_made[len(options) :]
        left = any(option.second for option in options) or None
        for option, key in zip(options, had, strict=False):
            key.hold("")
            key.become(option, left)
        made = keys_of(self.look, options[len(had) :], left=left, **self._how)
        for key in made:
            key.setCheckable(True)
            key.clicked.connect(self._clicked)
            key.installEventFilter(self)
        self._by_id = {option.id: key for option, key in zip(options, [*had, *made], strict=True)}
        for name, key in self._by_id.items():
            if key.property("option") != name:
                key.setProperty("option", name)
        self.set_keys([*had, *made])

    def _let_go(self, key: QWidget) -> None:
        """It waits until there are as many options again."""

    def key(self, option: str) -> Key:
        """The key of this option; raises KeyError where there is none."""
        return self._by_id[option]

    def held(self) -> list[str]:
        """The ids of all that are held, in reading order."""
        return [option for option, key in self._by_id.items() if key.held]

    def set_held(self, *options: str) -> None:
        """These are held and no others; an id that is not here is passed over."""
        for option, key in self._by_id.items():
            key.hold(self._held if option in options else "")

    def _clicked(self) -> None:
        option = self.sender().property("option")
        held = self.held()
        if option not in held:
            now = [*held, option] if self.many else [option]
        else:
            now = [other for other in held if other != option] if self._may_clear else held
        self.set_held(*now)
        self.picked.emit(option)
        self.changed.emit(self.held())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Arrows go to the key before or after, round the end."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            step = _STEPS.get(Qt.Key(event.key()))
            if step is not None and watched in self.keys:
                key = self.keys[(self.keys.index(watched) + step) % len(self.keys)]
                key.setFocus(Qt.FocusReason.TabFocusReason)
                bring_into_sight(key)
                return True
        return super().eventFilter(watched, event)
