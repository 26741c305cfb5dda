"""So many connections and no more; those that ask nothing are closed, and give way to one that may ask."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from aiohttp.web import Server


class Refusing(asyncio.Protocol):
    """Closes its connection as soon as it is made."""

    def connection_made(self, transport: asyncio.BaseTransport) -> None:
        """Nothing is read, nothing is said."""
        if isinstance(transport, asyncio.Transport):
            transport.abort()


def _waits(protocol: Any) -> bool:
    """Whether it waits for a request, and whatever it asked before has been answered."""
    waiter = protocol._waiter
    return waiter is not None and not waiter.done()


class Connections:
    """Hands a protocol to each connection, and watches how long it has been silent."""

    def __init__(self, server: Server, most: int, silence: float, clock: Callable[[], float]) -> None:
        self._server, self._most, self._silence, self._clock = server, most, silence, clock
        self._since: dict[Any, float] = {}
        self._leaving: set[Any] = set()  # told to close, and not gone yet

    def __call__(self) -> asyncio.BaseProtocol:
        """The protocol of one more connection, or of one too many."""
        if self._here() >= self._most and not self._make_room():
            return Refusing()
        protocol = self._server()
        self._since[protocol] = self._clock()
        return protocol

    def _here(self) -> int:
        """How many connections there are that stay."""
        self._leaving &= set(self._server.connections)
        return len(self._server.connections) - len(self._leaving)

    def _make_room(self) -> bool:
        """The one that has asked nothing for longest is closed; False where all of them ask something."""
        silent = [one for one in self._server.connections if _waits(one) and one not in self._leaving]
        if not silent:
            return False
        longest = min(silent, key=lambda one: self._since.get(one, self._clock()))
        longest.force_close()
        self._leaving.add(longest)
        return True

    def sweep(self) -> None:
        """Connections that have asked nothing for too long are closed."""
        open_ = set(self._server.connections)
        self._since = {one: since for one, since in self._since.items() if one in open_}
        now = self._clock()
        for protocol in open_:
            if protocol._current_request is not None:
                self._since[protocol] = now
            elif now - self._since.setdefault(protocol, now) > self._silence:
                protocol.force_close()
