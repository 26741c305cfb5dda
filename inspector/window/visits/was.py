"""What the visit before found at the open item, where there was one; said as what was, never as what is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.visits import was_words
from inspector.texts import tr
from inspector.window.longwords import LongWords

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.window.desk import Desk


class WasLine(LongWords):
    """One sentence at the open item; hidden where the visit before looked at nothing there."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, parent=parent)
        self.desk = desk
        self.hide()

    def show_item(self) -> None:
        """What was found at the item that is open now."""
        item = self.desk.profile.item_by_id[self.desk.item]
        words = was_words(self.desk.profile, self.desk.record, item)
        self.say(tr(words) if words else "")
        self.setVisible(words is not None)
