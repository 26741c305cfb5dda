"""The page for the phone while it is open: off until it is asked for, closed as soon as its machine is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from inspector.texts import tr
from inspector.window.phone.places import local_places
from inspector.window.phone.receiving import Hop, Receiving

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.phone.addresses import Place
    from inspector.phone.limits import Limits
    from inspector.phone.messages import Fate, Guest, Press, Sent
    from inspector.phone.server import Server
    from inspector.texts import Say
    from inspector.window.desk import Desk

LOOK_MS = 3_000  # between two looks whether the network is still there


class PhoneLink(QObject):
    """One page at most, for the machine that is open; ``changed`` tells that it, its code or its guests are others."""

    changed = Signal()

    def __init__(self, desk: Desk, places: Callable[[], tuple[Place, ...]] = local_places) -> None:
        super().__init__(desk)
        self.desk, self.places = desk, places
        self.server: Server | None = None
        self.limits: Limits | None = None
        self.clock: Callable[[], float] | None = None
        self.guests: tuple[Guest, ...] = ()
        self.code = self.until = self.trouble = ""
        self._record = ""
        self._runs = QTimer(self)
        self._runs.setSingleShot(True)
        self._runs.timeout.connect(self.changed)
        self._hop: Hop | None = None
        self._receiving = Receiving(desk)
        self._look = QTimer(self)
        self._look.setInterval(LOOK_MS)
        self._look.timeout.connect(self.look_for_network)
        desk.opened.connect(self._opened)
        desk.moved.connect(self._show)
        desk.changed.connect(self._show)

    # what it is

    @property
    def on(self) -> bool:
        """Whether the page is open."""
        return self.server is not None

    @property
    def run_out(self) -> bool:
        """Whether the code lets no more phones join."""
        return self.on and not self._runs.isActive()

    @property
    def address(self) -> str:
        """The address to be scanned; empty while the page is closed."""
        return f"http://{self.server.at}/{self.code}" if self.server is not None else ""

    @property
    def typed(self) -> str:
        """The address as it is best typed: where the computer is on one line, the code on another."""
        from inspector.phone.codes import spaced

        return f"http://{self.server.at}/\n{spaced(self.code)}" if self.server is not None else ""

    # opening and closing

    def open(self, address: str) -> bool:
        """The page is open on this address of the computer; False, with ``trouble`` in words, where it cannot be."""
        from inspector.phone.clock import seconds
        from inspector.phone.refusals import CannotOpen
        from inspector.phone.server import Server
        from inspector.window.phone.view import view_of

        self.close()
        hop = self._hop = self._hopping()
        server = Server(hop, tr, self.limits, self.clock or seconds)
        try:
            code = server.open(address, view_of(self.desk))
        except CannotOpen as trouble:
            self.trouble = tr(trouble.said)
            self.changed.emit()
            return False
        self.server, self._record, self.trouble = server, self.desk.record.id, ""
        self._look.start()
        self._take_code(code)
        return True

    def _hopping(self) -> Hop:
        """What one server calls; what it still had to say is passed over once there is another."""
        hop = Hop(self)
        hop.sent.connect(self._take)
        hop.pressed.connect(self._press)
        hop.joined.connect(self._joined)
        hop.over.connect(self._over)
        return hop

    def close(self) -> None:
        """Nothing listens any more, and every phone that shows the page says so."""
        server, self.server = self.server, None
        if server is None:
            return
        hop, self._hop = self._hop, None
        self._look.stop()
        self._runs.stop()
        server.close()
        if hop is not None:
            hop.deleteLater()
        self.guests, self.code, self.until = (), "", ""
        self.changed.emit()

    def renew(self) -> None:
        """Only a new code lets phones join from now on."""
        if self.server is not None:
            self._take_code(self.server.renew())

    def cut_off(self, number: int) -> None:
        """That phone can do nothing any more, nor come back with the code that it knew."""
        if self.server is not None:
            self._take_code(self.server.cut_off(number))

    def _take_code(self, code: str) -> None:
        from datetime import datetime, timedelta

        from inspector.phone.limits import Limits

        join = (self.limits or Limits()).join
        until = datetime.fromisoformat(self.desk.clock()) + timedelta(seconds=join)
        self.code, self.until = code, until.strftime("%H:%M")
        self._runs.start(round(1000 * join))
        self.changed.emit()

    def look_for_network(self) -> None:
        """The page is closed where the network on which it was open is gone."""
        if self.server is None:
            return
        address = self.server.at.rpartition(":")[0]
        if address not in {place.address for place in self.places()} and not address.startswith("127."):
            self.close()
            self._tell(tr("The page for the phone was closed: the network of {address} is gone.", address=address))

    # what happens at the desk

    def _opened(self) -> None:
        """The page belongs to one machine, and is closed with it."""
        if self.server is not None and (self.desk.session is None or self.desk.record.id != self._record):
            self.close()

    def _show(self, _: object = None) -> None:
        from inspector.window.phone.view import view_of

        if self.server is not None and self.desk.session is not None:
            self.server.show(view_of(self.desk))

    # what comes from the phones

    def _take(self, hop: Hop, sent: Sent, answer: Callable[[Fate], None]) -> None:
        if self._hop is hop:
            self._receiving.take(sent, answer)

    def _press(self, hop: Hop, press: Press, answer: Callable[[str], None]) -> None:
        answer(self._receiving.press(press) if self._hop is hop else tr("The page is closed."))

    def _joined(self, hop: Hop, guests: tuple[Guest, ...]) -> None:
        if self._hop is hop:
            self.guests = guests
            self.changed.emit()

    def _over(self, hop: Hop, why: Say) -> None:
        if self._hop is hop:
            self.close()
            self._tell(tr(why))

    def _tell(self, sentence: str) -> None:
        self.trouble = sentence
        self.desk.told.emit(sentence)
        self.changed.emit()
