"""The inks and papers of the three schemes, and the palette that stock widgets take from them."""

from dataclasses import dataclass, fields

from PySide6.QtGui import QColor, QPalette

MARKS = ("pass", "doubt", "fail")


@dataclass(frozen=True, slots=True)
class Inks:
    """The ten colours of one scheme, each as ``#RRGGBB``; `line` and the marks are never text."""

    paper: str
    tray: str
    ink: str
    soft: str
    line: str
    rule: str
    passed: str
    doubt: str
    fail: str
    focus: str

    def colour(self, name: str) -> QColor:
        """The colour of an ink by its name; the mark "pass" may be asked for by its word."""
        return QColor(getattr(self, "passed" if name == "pass" else name))

    def names(self) -> tuple[str, ...]:
        """The names of the ten inks, in the order of the table."""
        return tuple(field.name for field in fields(self))


LIGHT = Inks(
    "#FBFAF6", "#F0EDE4", "#1B2230", "#454A54", "#6A675E",
    "#D3CEC1", "#1C4E8C", "#835000", "#A3201B", "#0A5AA8",
)  # fmt: skip
DARK = Inks(
    "#14181E", "#1F252D", "#F2EFE6", "#BFC2C6", "#8D939C",
    "#39414C", "#93BFEE", "#E8B65C", "#FF9686", "#9CC9FF",
)  # fmt: skip
SUNLIGHT = Inks(
    "#FFFFFF", "#FFFFFF", "#000000", "#1C1C1C", "#000000",
    "#000000", "#00306E", "#553000", "#860000", "#0000B0",
)  # fmt: skip
SCHEMES = {"light": LIGHT, "dark": DARK, "sunlight": SUNLIGHT}

_ROLES = {
    "paper": ("Window", "Base", "Button", "ToolTipBase", "HighlightedText", "BrightText", "Light",
              "Midlight"),
    "tray": ("AlternateBase",),
    "ink": ("WindowText", "Text", "ButtonText", "ToolTipText", "Highlight", "Link", "LinkVisited",
            "Accent"),
    "soft": ("PlaceholderText",),
    "line": ("Mid", "Dark", "Shadow"),
}  # fmt: skip


def palette(inks: Inks) -> QPalette:
    """A palette in which every role is one of the inks; what is off is written in soft."""
    made = QPalette()
    for name, roles in _ROLES.items():
        for role in roles:
            made.setColor(QPalette.ColorRole[role], inks.colour(name))
    for role in ("WindowText", "Text", "ButtonText"):
        made.setColor(QPalette.ColorGroup.Disabled, QPalette.ColorRole[role], inks.colour("soft"))
    return made
