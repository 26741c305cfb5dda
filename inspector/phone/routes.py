"""The requests that the page makes, each answered in a few lines."""

from __future__ import annotations

import asyncio
import json
from dataclasses import asdict
from typing import TYPE_CHECKING, Any, TypeVar

from aiohttp import web

from inspector.phone.body import Lane, check_length, plain_name, read_whole
from inspector.phone.files import Page, fixed_files
from inspector.phone.guard import COOKIE, add_headers, device_of, guard
from inspector.phone.messages import VERBS, Fate, Press, Sent
from inspector.phone.refusals import Refused
from inspector.phone.words import CLOSED, NO_ANSWER, NOT_UNDERSTOOD, OTHER_MACHINE, TOO_OFTEN

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable

    from inspector.phone.devices import Device
    from inspector.phone.opening import Opening
    from inspector.texts import Say

CODE = "/{code:[0-9A-Za-z-]{20,40}}"
QUIET = 10.0  # seconds after which a page that hears nothing is told that all is well
NEWS = {"Content-Type": "text/event-stream; charset=utf-8", "X-Accel-Buffering": "no"}

T = TypeVar("T")


class Routes:
    """Answers every request of one opening."""

    def __init__(self, opening: Opening, host: str, translate: Callable[[Say], str]) -> None:
        self.opening, self.host, self.translate = opening, host, translate
        self.page, self.files = Page(translate, opening.limits), fixed_files()
        self.lane = Lane(opening.limits.at_once, opening.limits.waiting)
        self._open: set[asyncio.Future[Any]] = set()

    def application(self) -> web.Application:
        """All of it as one application: these paths and no others."""
        made = web.Application(middlewares=[guard(self.opening, self.host, self.translate)])
        made.on_response_prepare.append(add_headers)
        for path in self.files:
            made.router.add_get(path, self.known(self.file), allow_head=False)
        made.router.add_get("/", self.known(self.show), allow_head=False)
        made.router.add_get("/news", self.known(self.news), allow_head=False)
        made.router.add_post("/photograph", self.known(self.photograph))
        made.router.add_post("/press", self.known(self.press))
        made.router.add_get(CODE, self.join, allow_head=False)
        return made

    def known(
        self, handler: Callable[[web.Request, Device], Awaitable[web.StreamResponse]]
    ) -> Callable[[web.Request], Awaitable[web.StreamResponse]]:
        """The handler, for devices that joined and nobody else."""

        async def handled(request: web.Request) -> web.StreamResponse:
            return await handler(request, device_of(self.opening, request))

        return handled

    # the page

    async def join(self, request: web.Request) -> web.StreamResponse:
        """The page, for whoever has the code; the browser is known from now on."""
        device = self.opening.devices.known(request.cookies.get(COOKIE, ""), self.opening.clock())
        if device is None or not self.opening.code.fits(request.match_info["code"]):
            device = self.opening.join(request.match_info["code"], request.remote or "")
        answer = await self.show(request, device)
        # It outlasts the browser, which a phone may end while its camera is in use.
        stay = round(self.opening.limits.stay)
        answer.set_cookie(COOKIE, device.secret, max_age=stay, httponly=True, samesite="Strict", path="/")
        return answer

    async def show(self, request: web.Request, device: Device) -> web.Response:
        """The page of this device."""
        return web.Response(text=self.page.for_device(device), content_type="text/html")

    async def file(self, request: web.Request, device: Device) -> web.Response:
        """One of the files beside the page."""
        found = self.files[request.path]
        return web.Response(body=found.data, content_type=found.media)

    # what it hears

    async def news(self, request: web.Request, device: Device) -> web.StreamResponse:
        """Tells what is open now, each time it changes, until the page is closed or the device cut off."""
        if len(device.listeners) >= self.opening.limits.listeners:
            raise Refused(429, TOO_OFTEN)
        answer = web.StreamResponse(headers=NEWS)
        wake = asyncio.Event()
        wake.set()
        device.listeners.append(wake)
        self.opening.tell()
        try:
            await answer.prepare(request)
            while await self._tell(answer, device, wake):
                pass
        except ConnectionError:
            pass  # the page was closed on the phone
        finally:
            device.listeners.remove(wake)
            self.opening.tell()
        return answer

    async def _tell(self, answer: web.StreamResponse, device: Device, wake: asyncio.Event) -> bool:
        try:
            await asyncio.wait_for(wake.wait(), QUIET)
        except TimeoutError:
            await answer.write(b"event: well\ndata: {}\n\n")
            return True
        wake.clear()
        over = "ended" if self.opening.ended else "cut" if device.cut else ""
        shown = "{}" if over else json.dumps(asdict(self.opening.view))
        await answer.write(f"event: {over or 'now'}\ndata: {shown}\n\n".encode())
        return not over

    # what it sends

    async def photograph(self, request: web.Request, device: Device) -> web.Response:
        """Reads one photograph and tells what became of it."""
        limits = self.opening.limits
        self.opening.room()
        check_length(request, limits.file_bytes)
        record, item = self._named(dict(request.query))
        name = plain_name(request.headers.get("X-Name", ""))
        async with self.lane.turn():
            data = await read_whole(request, limits.file_bytes, limits, self.opening.came)
            self._still(record, device)
            sent = Sent(name, data, record, item, device.number)
            del data
            fate = await self._answered(
                lambda answer: self.opening.host.photograph(sent, answer), Fate("refused", self.translate(CLOSED))
            )
        if fate.outcome != "refused":
            self.opening.counted(device)
        return web.json_response({"outcome": fate.outcome, "sentence": fate.sentence})

    async def press(self, request: web.Request, device: Device) -> web.Response:
        """Does what the key on the phone says, at the item that the phone showed."""
        limits = self.opening.limits
        body = await read_whole(request, limits.press_bytes, limits, lambda _: None)
        try:
            asked = json.loads(body)
        except (ValueError, RecursionError):
            raise Refused(400, NOT_UNDERSTOOD) from None
        if not isinstance(asked, dict) or asked.get("verb") not in VERBS:
            raise Refused(400, NOT_UNDERSTOOD)
        record, item = self._named(asked)
        self._still(record, device)
        press = Press(asked["verb"], record, item, device.number)
        said = await self._answered(lambda answer: self.opening.host.press(press, answer), self.translate(CLOSED))
        return web.json_response({"sentence": said}, status=409 if said else 200)

    def _named(self, asked: dict[str, Any]) -> tuple[str, str]:
        """Record and item that the phone showed, as texts; raises Refused for another record or none."""
        record, item = asked.get("record"), asked.get("item")
        if not isinstance(record, str) or not isinstance(item, str) or not item or len(item) > 120:
            raise Refused(400, NOT_UNDERSTOOD)
        if record != self.opening.view.record:
            raise Refused(409, OTHER_MACHINE)
        return record, item

    def _still(self, record: str, device: Device) -> None:
        """The page is still open, for this device, with this record; raises Refused otherwise."""
        if self.opening.ended or device.cut:
            raise Refused(410, CLOSED)
        if record != self.opening.view.record:
            raise Refused(409, OTHER_MACHINE)

    async def _answered(self, ask: Callable[[Callable[[T], None]], None], closed: T) -> T:
        """What the host answers, from whatever thread; ``closed`` where the page is closed before that.

        Raises Refused where no answer comes.
        """
        loop = asyncio.get_running_loop()
        future: asyncio.Future[T] = loop.create_future()

        def answer(value: T) -> None:
            try:
                loop.call_soon_threadsafe(_settle, future, value)
            except RuntimeError:
                return  # the server has ended meanwhile

        self._open.add(future)
        ask(answer)
        try:
            async with asyncio.timeout(self.opening.limits.answer):
                return await future
        except TimeoutError:
            raise Refused(504, NO_ANSWER) from None
        except asyncio.CancelledError:
            if not self.opening.ended:
                raise
            return closed
        finally:
            self._open.discard(future)

    def let_go(self) -> None:
        """Nobody waits for an answer of the host any more."""
        for future in tuple(self._open):
            future.cancel()


def _settle(future: asyncio.Future[T], value: T) -> None:
    if not future.done():
        future.set_result(value)
