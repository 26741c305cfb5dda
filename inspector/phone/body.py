"""A photograph read from the network: never more of it at a time than may be kept."""

from __future__ import annotations

import asyncio
import re
from contextlib import asynccontextmanager
from typing import TYPE_CHECKING
from urllib.parse import unquote

from aiohttp import ClientError
from aiohttp.http_exceptions import HttpProcessingError
from aiohttp.web import RequestPayloadError

from inspector.phone.refusals import Refused
from inspector.phone.words import BROKE_OFF, BUSY, EMPTY, PACKED, TOO_LARGE
from inspector.texts import say

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable

    from aiohttp import web

    from inspector.phone.limits import Limits

MEGABYTE = 1_000_000
NAME_LENGTH = 120
BROKEN = (OSError, TimeoutError, ClientError, HttpProcessingError, RequestPayloadError, ValueError)


class Lane:
    """So many photographs are read at one time, and so many wait; others are refused."""

    def __init__(self, at_once: int, waiting: int) -> None:
        self._room = asyncio.Semaphore(at_once)
        self._most, self._here = at_once + waiting, 0

    @asynccontextmanager
    async def turn(self) -> AsyncIterator[None]:
        """It is this one's turn; raises Refused where too many wait already."""
        if self._here >= self._most:
            raise Refused(503, BUSY)
        self._here += 1
        try:
            async with self._room:
                yield
        finally:
            self._here -= 1


def check_length(request: web.Request, most: int) -> None:
    """What the request says of its body can be taken; raises Refused before anything of it is read."""
    if request.headers.get("Content-Encoding", "identity").lower() != "identity":
        raise Refused(415, PACKED)
    length = request.content_length
    if length is not None and length > most:
        raise too_large(most)


async def read_whole(request: web.Request, most: int, limits: Limits, came: Callable[[int], None]) -> bytes:
    """All bytes of the body, one at least and ``most`` at most; raises Refused, and what ``came`` raises of a piece."""
    check_length(request, most)
    try:
        data = await _pieces(request, most, limits, came)
    except BROKEN as error:
        raise Refused(400, BROKE_OFF) from error
    if request.content_length not in (None, len(data)):
        raise Refused(400, BROKE_OFF)
    if not data:
        raise Refused(400, EMPTY)
    return data


async def _pieces(request: web.Request, most: int, limits: Limits, came: Callable[[int], None]) -> bytes:
    clock = asyncio.get_running_loop().time
    pieces, size, until = [], 0, clock() + limits.whole
    while piece := await _piece(request, min(limits.silence, until - clock())):
        size += len(piece)
        if size > most:
            raise too_large(most)
        came(len(piece))
        pieces.append(piece)
    return b"".join(pieces)


async def _piece(request: web.Request, within: float) -> bytes:
    if within <= 0:  # what is there already would be read without waiting, however late it is
        raise TimeoutError
    # Not wait_for, which in Python 3.11 forgets that it was cancelled where bytes come at that moment.
    async with asyncio.timeout(within):
        return await request.content.readany()


def too_large(most: int) -> Refused:
    """The refusal of a file with more bytes than ``most``."""
    return Refused(413, say(TOO_LARGE.template, most=most // MEGABYTE))


def plain_name(given: str) -> str:
    """The file's own name out of what a browser sent, percent-encoded: no folders, no control signs, not too long."""
    name = re.split(r"[/\\]", unquote(given, errors="replace"))[-1]
    name = " ".join("".join(sign if sign.isprintable() else " " for sign in name).split()).strip(". ")
    if len(name) > NAME_LENGTH:
        stem, dot, ending = name.rpartition(".")
        short = ending if dot and len(ending) <= 5 else ""
        name = (stem or name)[: NAME_LENGTH - 6] + (f".{short}" if short else "")
    return name
