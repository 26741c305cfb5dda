"""The server: a thread of its own with a loop of its own, listening on one address while it is wanted."""

from __future__ import annotations

import asyncio
import logging
import socket
import threading
from typing import TYPE_CHECKING, TypeVar

from aiohttp import web

from inspector.phone.addresses import is_local
from inspector.phone.clock import seconds
from inspector.phone.connections import Connections
from inspector.phone.limits import Limits
from inspector.phone.opening import Opening
from inspector.phone.refusals import CannotOpen
from inspector.phone.routes import Routes
from inspector.phone.words import BROKEN, NO_ADDRESS, NOT_OPENED
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.phone.messages import Host, View

PATIENCE = 5.0  # seconds in which the thread must have begun, answered or ended
BACKLOG = 32
LINGER = 0.3  # seconds in which the rest of a refused body is thrown away, so that its answer arrives
GOODBYE = 0.3  # seconds in which answers on their way may still go out

T = TypeVar("T")


class Server:
    """One opening of the page; it is used once. Its methods may be called from any thread but its own."""

    def __init__(
        self, host: Host, translate: Callable[[Say], str],
        limits: Limits | None = None, clock: Callable[[], float] = seconds,
    ) -> None:  # fmt: skip
        self._host, self._translate = host, translate
        self._limits, self._clock = limits or Limits(), clock
        self._opening: Opening | None = None
        self._loop: asyncio.AbstractEventLoop | None = None
        self._stop = asyncio.Event()
        self._why: Say | None = None
        self._thread: threading.Thread | None = None
        self.at = ""  # address and port, as in 192.168.1.4:43817

    # opening and closing

    def open(self, address: str, view: View) -> str:
        """The page can be joined at this address; gives the code. Raises CannotOpen where it cannot be opened."""
        listening = self._listen(address)
        self.at = f"{address}:{listening.getsockname()[1]}"
        opening = self._opening = Opening(self._host, view, self._limits, self._clock)
        code = opening.renew()
        ready = threading.Event()
        self._thread = threading.Thread(target=self._run, args=(opening, listening, ready), name="phone", daemon=True)
        self._thread.start()
        ready.wait(PATIENCE)
        return code

    def _listen(self, address: str) -> socket.socket:
        if not is_local(address):
            raise CannotOpen(say(NO_ADDRESS.template, address=address))
        listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        try:
            listening.bind((address, 0))
            listening.listen(BACKLOG)
        except OSError as error:
            listening.close()
            reason = error.strerror or type(error).__name__
            raise CannotOpen(say(NOT_OPENED.template, address=address, reason=reason)) from error
        return listening

    def close(self) -> None:
        """The page is closed: every phone that shows it is told, and nothing listens any more."""
        if self._thread is None:
            return
        self._soon(self._stop.set)
        if self._thread is not threading.current_thread():
            self._thread.join(PATIENCE)

    @property
    def running(self) -> bool:
        """Whether the page is open."""
        return self._thread is not None and self._thread.is_alive()

    # what the window asks

    def show(self, view: View) -> None:
        """Every phone shows this from now on."""
        opening = self._opening
        if opening is not None:
            self._soon(lambda: opening.show(view))

    def renew(self) -> str:
        """A new code, the only one that lets devices join from now on; empty where the page is closed."""
        opening = self._opening
        return self._asked(opening.renew) if opening is not None else ""

    def cut_off(self, number: int) -> str:
        """The device is cut off; gives the new code, as the old one was known to it."""
        opening = self._opening
        return self._asked(lambda: opening.cut_off(number)) if opening is not None else ""

    def _soon(self, act: Callable[[], object]) -> None:
        if self._loop is None:
            return
        try:
            self._loop.call_soon_threadsafe(act)
        except RuntimeError:
            return  # the loop has ended, and with it whatever was to be told

    def _asked(self, act: Callable[[], str]) -> str:
        async def asked() -> str:
            return act()

        if self._loop is None or not self.running:
            return ""
        return asyncio.run_coroutine_threadsafe(asked(), self._loop).result(PATIENCE)

    # in its own thread

    def _run(self, opening: Opening, listening: socket.socket, ready: threading.Event) -> None:
        try:
            with asyncio.Runner() as runner:
                self._loop = runner.get_loop()
                runner.run(self._serve(opening, listening, ready))
        except Exception as error:
            logging.getLogger(__name__).exception("The phone's page broke down")
            self._why = say(BROKEN.template, what=str(error))
        finally:
            listening.close()
            ready.set()
        if self._why is not None:
            self._host.ended(self._why)

    async def _serve(self, opening: Opening, listening: socket.socket, ready: threading.Event) -> None:
        routes = Routes(opening, self.at, self._translate)
        runner = _runner(routes.application())
        await runner.setup()
        handed = runner.server
        if handed is None:
            raise RuntimeError("the server was not made")
        connections = Connections(handed, self._limits.connections, self._limits.silence, self._clock)
        server = await asyncio.get_running_loop().create_server(connections, sock=listening, backlog=BACKLOG)
        ready.set()
        try:
            while self._why is None and not await self._stopped():
                connections.sweep()
                self._why = opening.beat()
        finally:
            opening.end()
            server.close()
            routes.let_go()
            await runner.cleanup()

    async def _stopped(self) -> bool:
        """Whether the page is to be closed; waits one beat for it."""
        try:
            await asyncio.wait_for(self._stop.wait(), self._limits.beat)
        except TimeoutError:
            return False
        return True


def _runner(application: web.Application) -> web.AppRunner:
    """Reads what is asked within narrow bounds, logs nothing, and leaves the system's signals alone."""
    # What it cannot even read it would write out with its whole way through this program, as often as it comes.
    silent = logging.Logger("phone", logging.CRITICAL)
    return web.AppRunner(
        application, access_log=None, logger=silent, handle_signals=False, shutdown_timeout=GOODBYE,
        max_line_size=2_000, max_field_size=4_000, lingering_time=LINGER, keepalive_timeout=30.0,
    )  # fmt: skip
