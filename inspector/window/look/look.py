"""The look of one window: scheme, size of type, millimetres, and word of every change."""

from math import ceil

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QFont, QGuiApplication, QScreen
from PySide6.QtWidgets import QApplication, QWidget

from inspector.window.look.inks import SCHEMES, SUNLIGHT, Inks, palette
from inspector.window.look.type import LEADING, SEMIBOLD, STEPS, Words, make_font

SANE_DPI = (70.0, 400.0)
MM_PER_INCH = 25.4
SMALLEST, LARGEST = 1.0, 1.75
MOST_WORDS = 2000  # texts that are kept laid out


class Look(QObject):
    """What every widget is drawn with; ``changed`` says that all must be drawn again."""

    changed = Signal()

    def __init__(
        self, scheme: str = "system", text_scale: float = 1.0,
        px_per_mm: float | None = None, parent: QObject | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self._scheme = scheme if scheme in SCHEMES else "system"
        self._scale = _within(text_scale)
        self._fixed = px_per_mm
        self.by_keyboard = False  # whether the last thing that moved the focus was a key
        self._px_per_mm = px_per_mm or px_per_mm_of(QGuiApplication.primaryScreen())
        self._words: dict[tuple[str, str, bool, bool, str], Words] = {}
        self._colours: dict[str, QColor] = {}
        self._fonts: dict[tuple[str, bool, bool], QFont] = {}
        hints = QGuiApplication.styleHints()
        hints.colorSchemeChanged.connect(self._system_changed)
        self.inks: Inks = self._resolved()

    # what it is drawn in

    @property
    def scheme(self) -> str:
        """The chosen scheme: light, dark, sunlight or system."""
        return self._scheme

    def set_scheme(self, name: str) -> None:
        """The scheme is the named one; "system" follows the system from now on."""
        if name not in (*SCHEMES, "system"):
            raise ValueError(f"There is no scheme {name!r}: choose light, dark, sunlight or system.")
        self._scheme = name
        self._renew()

    def colour(self, name: str) -> QColor:
        """The colour of the named ink in the scheme that holds now."""
        if name not in self._colours:
            self._colours[name] = self.inks.colour(name)
        return self._colours[name]

    # how large it is

    @property
    def text_scale(self) -> float:
        """The user's size of type, 1.0 to 1.75."""
        return self._scale

    def set_text_scale(self, scale: float) -> None:
        """Type and rows are this many times their plain size, held within 1.0 to 1.75."""
        self._scale = _within(scale)
        self._renew()

    @property
    def px_per_mm(self) -> float:
        """Pixels (device independent) to the millimetre."""
        return self._px_per_mm

    def set_px_per_mm(self, value: float) -> None:
        """A millimetre is this many pixels, whatever the screen says."""
        self._fixed = self._px_per_mm = value
        self._renew()

    def follow(self, window: QWidget) -> None:
        """Millimetres are those of the screen that the window is on, also after it moves."""
        handle = window.window().windowHandle()
        if handle is not None and self._fixed is None:
            handle.screenChanged.connect(self._screen_changed)
            self._screen_changed(handle.screen())

    def mm(self, millimetres: float) -> float:
        """Pixels of a length that does not grow with the type: lines, gaps."""
        return millimetres * self._px_per_mm

    def px(self, millimetres: float) -> int:
        """As `mm`, in whole pixels and at least one."""
        return max(1, round(self.mm(millimetres)))

    def grown(self, millimetres: float) -> int:
        """Whole pixels of a length that grows with the type: rows, keys, signs."""
        return max(1, round(self.mm(millimetres) * self._scale))

    def least(self, millimetres: float) -> int:
        """As `grown`, but never less than asked: the size of what is pressed."""
        return max(1, ceil(self.mm(millimetres) * self._scale))

    # type

    def font(self, step: str = "text", semibold: bool | None = None, zero: bool = False) -> QFont:
        """The font of a step; its own weight unless ``semibold`` says otherwise."""
        heavy = step in SEMIBOLD if semibold is None else semibold
        key = (step, heavy, zero)
        if key not in self._fonts:
            self._fonts[key] = make_font(self.grown(STEPS[step]), heavy, zero)
        return self._fonts[key]

    def leading(self, step: str = "text") -> float:
        """The distance between lines of a step, in pixels."""
        return self.grown(STEPS[step]) * LEADING

    def words(
        self, text: str, step: str = "text", semibold: bool | None = None, zero: bool = False, lead: str = ""
    ) -> Words:
        """The text laid out in a step, after a ``lead`` in semibold; laid out once until the look changes."""
        heavy = step in SEMIBOLD if semibold is None else semibold
        key = (text, step, heavy, zero, lead)
        found = self._words.get(key)
        if found is None:
            if len(self._words) >= MOST_WORDS:
                del self._words[next(iter(self._words))]  # the oldest alone: all at once would be felt
            first = (self.font(step, True, zero), self.colour("ink")) if lead else None
            found = self._words[key] = Words(text, self.font(step, heavy, zero), lead, first)
        return found

    # the application

    def dress(self, application: QApplication) -> None:
        """Stock widgets, tool tips and dialogs are in this look, also after it changes."""
        application.setStyle("Fusion")
        self._dress()
        self.changed.connect(self._dress)

    def _dress(self) -> None:
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.setPalette(palette(self.inks))
            application.setFont(self.font("text"))

    def _renew(self) -> None:
        self._words.clear()
        self._fonts.clear()
        self._colours.clear()
        self.inks = self._resolved()
        self.changed.emit()

    def _resolved(self) -> Inks:
        return SCHEMES.get(self._scheme) or system_inks()

    def _system_changed(self) -> None:
        if self._scheme == "system" and self._resolved() != self.inks:
            self._renew()

    def _screen_changed(self, screen: QScreen | None) -> None:
        found = px_per_mm_of(screen)
        if self._fixed is None and found != self._px_per_mm:
            self._px_per_mm = found
            self._renew()


def px_per_mm_of(screen: QScreen | None) -> float:
    """Pixels to the millimetre by the screen's own size, or by its logical one where that is odd."""
    if screen is None:
        return 96 / MM_PER_INCH
    physical = screen.physicalDotsPerInch()
    sane = SANE_DPI[0] <= physical <= SANE_DPI[1]
    return (physical if sane else screen.logicalDotsPerInch()) / MM_PER_INCH


def system_inks() -> Inks:
    """The inks that the system's scheme asks for; a light one with high contrast is sunlight."""
    hints = QGuiApplication.styleHints()
    if hints.colorScheme() == Qt.ColorScheme.Dark:
        return SCHEMES["dark"]
    if hasattr(hints, "accessibility"):
        wish = getattr(hints.accessibility(), "contrastPreference", None)
        if wish is not None and wish() == Qt.ContrastPreference.HighContrast:
            return SUNLIGHT
    return SCHEMES["light"]


def _within(scale: float) -> float:
    return min(max(float(scale), SMALLEST), LARGEST)
