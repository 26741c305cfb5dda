"""The key that opens the sheet of the phone, and says whether its page is open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.texts import tr, trn
from inspector.window.look.keys import Key
from inspector.window.phone.link import PhoneLink

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.window.desk import Desk
    from inspector.window.phone.sheet import PhoneSheet


class PhoneKey(Key):
    """Opens the sheet; while the page is open it is held and tells how many phones have joined."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, tr("phone"), name=tr("Photograph with the phone"), parent=parent)
        self.link = PhoneLink(desk)
        self.sheet: PhoneSheet | None = None
        self.clicked.connect(self.open)
        self.link.changed.connect(self.show_link)

    def open(self) -> None:
        """The sheet is open over the window."""
        from inspector.window.phone.sheet import PhoneSheet

        self.sheet = PhoneSheet(self.link, self.window())
        self.sheet.open()

    def show_link(self) -> None:
        """The key says how things stand now."""
        link = self.link
        if not link.on:
            self.say(tr("phone"), name=tr("Photograph with the phone"))
            self.hold("")
            return
        joined = trn("{count} phone has joined", "{count} phones have joined", len(link.guests))
        words = joined if link.guests else tr("phone: page open")
        self.say(words, name=tr("Photograph with the phone; {state}", state=words))
        self.hold("kept")
