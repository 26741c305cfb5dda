"""So many connections and no more; those that ask nothing are closed."""

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


class Connections:
    """Hands a protocol to each connection, and watches how long it has been silent."""

    def __init__(self, server: Server, most: int, silence: float, clock: Callable[[], float]) -> None:
        self._server, self._most, self._silence, self._clock = server, most, silence, clock
        self._since: dict[Any, float] = {}

    def __call__(self) -> asyncio.BaseProtocol:
        """The protocol of one more connection, or of one too many."""
        if len(self._server.connections) >= self._most:
            return Refusing()
        protocol = self._server()
        self._since[protocol] = self._clock()
        return protocol

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
