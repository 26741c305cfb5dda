"""One opening of the page: its code, its devices, what they see, how much was sent. Lives in the server's thread."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.phone.clock import Pulse
from inspector.phone.codes import Code, new_code
from inspector.phone.devices import Device, Devices
from inspector.phone.rate import Rate
from inspector.phone.refusals import Refused
from inspector.phone.words import ALONE, FULL, OLD_CODE, SLEPT, TOO_MANY, WRONG_CODE
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.phone.limits import Limits
    from inspector.phone.messages import Host, View


class Opening:
    """Who may come in, and what they see; the clock counts seconds."""

    def __init__(self, host: Host, view: View, limits: Limits, clock: Callable[[], float]) -> None:
        self.host, self.view, self.limits, self.clock = host, view, limits, clock
        self.devices = Devices()
        self.code = Code("", 0.0)
        self.ended = False
        self.asks = Rate(limits.burst, limits.rate, clock)
        self.wrongs = Rate(limits.wrong, limits.wrong_rate, clock)
        self._pulse = Pulse(clock, limits.asleep)
        self._files = self._bytes = 0
        self._last_seen = clock()

    # coming in

    def renew(self) -> str:
        """The code that lets devices join from now on; the one before is of no use any more."""
        self.code = Code(new_code(), self.clock() + self.limits.join)
        return self.code.text

    def join(self, typed: str, address: str) -> Device:
        """A device that came with the code; raises Refused for a wrong or an old one, or where all places are taken."""
        if not self.code.fits(typed):
            self.wrongs.passes(address)
            raise Refused(403, WRONG_CODE)
        if self.clock() >= self.code.until:
            raise Refused(403, OLD_CODE)
        if len(self.devices) >= self.limits.devices:
            raise Refused(403, say(FULL.template, most=self.limits.devices))
        device = self.devices.join(address, self.clock() + self.limits.stay)
        self.tell()
        return device

    def cut_off(self, number: int) -> str:
        """The device is cut off, and the code with which it could join again is of no use; gives the new one."""
        self.devices.cut_off(number)
        self.tell()
        return self.renew()

    # what they see

    def show(self, view: View) -> None:
        """Every phone shows this."""
        self.view = view
        for device in self.devices:
            device.wake()

    def tell(self) -> None:
        """The host knows which devices there are."""
        self.host.guests(tuple(device.guest for device in self.devices))

    def end(self) -> None:
        """Nobody may do anything any more, and every page is told."""
        self.ended = True
        for device in self.devices:
            device.wake()

    # what they send

    def room(self) -> None:
        """There is room for one more photograph; raises Refused where there is none."""
        if self._files >= self.limits.files or self._bytes >= self.limits.all_bytes:
            raise Refused(507, TOO_MANY)

    def came(self, size: int) -> None:
        """So many bytes more came in; raises Refused where that is too much."""
        self._bytes += size
        if self._bytes > self.limits.all_bytes:
            raise Refused(507, TOO_MANY)

    def counted(self, device: Device) -> None:
        """A photograph more is with the host."""
        self._files += 1
        device.photographs += 1
        self.tell()

    # time

    def beat(self) -> Say | None:
        """Devices that outstayed are cut off; gives why the page is to be closed, if it is."""
        if self._pulse.slept(self.limits.beat):
            return SLEPT
        now = self.clock()
        if self.devices.outstayed(now):
            self.tell()
        if len(self.devices):
            self._last_seen = now
        return ALONE if now - self._last_seen > self.limits.alone else None
