"""The phones that have joined, each with a row that cuts it off."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal

from inspector.texts import tr, trn
from inspector.window.look.columns import Column
from inspector.window.look.rows import Row
from inspector.window.look.text import Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.phone.messages import Guest
    from inspector.window.look.look import Look


class Guests(Column):
    """A row for each phone, which stays the same while its phone stays: it may be under the finger just now.

    ``cutOff(number)`` tells of a touch.
    """

    cutOff = Signal(int)

    def __init__(self, look: Look) -> None:
        super().__init__(look, edge=0, top=0)
        self.rows: dict[int, Row] = {}  # by the numbers of the phones
        self.nobody = Text(look, tr("none yet"), ink="soft")
        self.add(self.nobody)

    def show_guests(self, guests: Sequence[Guest]) -> None:
        """These have joined, and no others."""
        here = {guest.number: guest for guest in guests}
        for number in [number for number in self.rows if number not in here]:
            self._let_go(self.rows.pop(number))
        for number, guest in here.items():
            if number not in self.rows:
                self.rows[number] = self._row(number)
            self.rows[number].say(second=_said(guest))
        self.nobody.setVisible(not here)

    def _row(self, number: int) -> Row:
        row = Row(self.look, tr("Phone {number}", number=number), aside=tr("cut off"), arrow=False, strong=True)
        row.clicked.connect(partial(self._touched, number))
        self.insert(len(self.rows), row, 0)
        return row

    def _touched(self, number: int, _: bool = False) -> None:
        self.cutOff.emit(number)

    def _let_go(self, row: Row) -> None:
        self.take(row)
        row.hide()
        row.deleteLater()


def _said(guest: Guest) -> str:
    """Where the phone is, whether its page is open, and what came from it."""
    sent = trn("{count} photograph sent", "{count} photographs sent", guest.photographs)
    seen = tr("page open") if guest.live else tr("page not in sight")
    return f"{guest.address}, {seen}, {sent}"
