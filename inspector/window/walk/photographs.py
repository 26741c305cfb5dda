"""The photographs of the open item."""

from PySide6.QtWidgets import QWidget

from inspector.window.bringing import PhotographStrip as Strip
from inspector.window.bringing import Tie
from inspector.window.desk import Desk
from inspector.window.phone.key import PhoneKey


class PhotographStrip(Strip):
    """Small pictures of the open item, and keys to bring more, also from a phone."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.phone = PhoneKey(desk)
        self.row.set_keys([self.plus, self.paste, self.phone])

    def tie(self) -> Tie:
        """The item that is open."""
        return Tie(item=self.desk.item)

    def more(self) -> list[QWidget]:
        """The key of the phone."""
        return [self.phone]
