"""What stands below the first sight of the page Machines: the whole file, cautions, the look, backups."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.resource import outline
from inspector.texts import tr
from inspector.window.drawing import show_drawing
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.outline import OutlineView
from inspector.window.look.signs import SignLabel
from inspector.window.look.text import SectionHead, Text
from inspector.window.machines.backups import Backups
from inspector.window.machines.settings import Appearance
from inspector.window.visits.file import WholeFile

if TYPE_CHECKING:
    from inspector.window.desk import Desk


class Rest:
    """Stands at the end of both columns of the page; the settings beside the list, or below it in one column."""

    def __init__(self, desk: Desk, begin: Column, listed: Column) -> None:
        self.desk = desk
        look = desk.look
        self.file = WholeFile(desk)
        self.outline = OutlineView(look)
        show_drawing(self.outline, [path for path in (outline("left"),) if path])
        # Beside the list there is room for the settings; in one column the list comes first.
        self.beside, self.below = Column(look, edge=0, top=0), Column(look, edge=0, top=0)
        begin.add(self.beside, 9)
        listed.add(self.file, 9)
        listed.add(self.outline)
        listed.add(SectionHead(look, tr("Before touching anything")))
        for caution in cautions():
            listed.add(Text(look, "–  " + caution), 2)
        marks = [SignLabel(look, mark, tr(mark)) for mark in ("pass", "doubt", "fail")]
        listed.add(KeyRow(look, marks, fit="flow"))
        listed.add(
            Text(look, tr("Three marks. What was not seen stays open and is never counted as right."), ink="soft"), 2
        )
        listed.add(self.below, 9)

    def place_settings(self, narrow: bool) -> None:
        """The settings stand where there is room for them."""
        for home, shown in ((self.beside, not narrow), (self.below, narrow)):
            if shown and not home.widgets():
                home.add(Appearance(self.desk.look))
                home.add(Backups(self.desk), 9)
            home.setVisible(shown)


def cautions() -> tuple[str, ...]:
    """What is said before anything is touched."""
    return (
        tr("The machine stands firmly, or somebody holds it."),
        tr("Exhaust may be hot; fuel and battery are there. No starting indoors."),
        tr("Ask before you touch. Never abrade, etch or file a number pad."),
    )
