"""The devices that joined: each known by a secret of its own, until it is cut off."""

from __future__ import annotations

import hmac
import secrets
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from inspector.phone.messages import Guest

if TYPE_CHECKING:
    import asyncio
    from collections.abc import Iterator

SECRET_BYTES = 24


@dataclass(slots=True, eq=False)
class Device:
    """One browser: its secret, its number as it is shown, and until when it may stay."""

    number: int
    address: str
    until: float
    secret: str = field(default_factory=lambda: secrets.token_urlsafe(SECRET_BYTES), repr=False)
    photographs: int = 0
    cut: bool = False
    listeners: list[asyncio.Event] = field(default_factory=list)

    def wake(self) -> None:
        """Every page of this device that listens looks for news."""
        for listener in self.listeners:
            listener.set()

    @property
    def guest(self) -> Guest:
        """The device as it is shown."""
        return Guest(self.number, self.address, bool(self.listeners), self.photographs)


class Devices:
    """Those that joined and may still stay, each with a number that no other had before."""

    def __init__(self) -> None:
        self._all: list[Device] = []
        self._numbers = 0

    def __iter__(self) -> Iterator[Device]:
        return iter(tuple(self._all))

    def __len__(self) -> int:
        return len(self._all)

    def join(self, address: str, until: float) -> Device:
        """A device more."""
        self._numbers += 1
        device = Device(self._numbers, address, until)
        self._all.append(device)
        return device

    def known(self, secret: str, now: float) -> Device | None:
        """The device with this secret, if it may still stay."""
        found = None
        for device in self._all:
            if hmac.compare_digest(device.secret.encode(), secret.encode()) and now < device.until:
                found = device
        return found

    def cut_off(self, number: int) -> bool:
        """Whether there was a device of this number; its secret is of no use from now on."""
        found = [device for device in self._all if device.number == number]
        for device in found:
            self._leave(device)
        return bool(found)

    def outstayed(self, now: float) -> bool:
        """Whether there were devices whose time is over; they are cut off."""
        over = [device for device in self._all if now >= device.until]
        for device in over:
            self._leave(device)
        return bool(over)

    def _leave(self, device: Device) -> None:
        self._all.remove(device)
        device.cut = True
        device.wake()
