"""What every request must pass before anything is done, and what every answer carries."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING

from aiohttp import web

from inspector.phone.files import refusal_page
from inspector.phone.refusals import Refused
from inspector.phone.words import (
    FAULT,
    NOT_UNDERSTOOD,
    NOTHING_THERE,
    PAGE,
    STRANGER,
    TOO_OFTEN,
    WRONG_HOST,
    WRONG_ORIGIN,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from aiohttp.typedefs import Handler, Middleware

    from inspector.phone.devices import Device
    from inspector.phone.opening import Opening
    from inspector.texts import Say

COOKIE = "phone"
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'; connect-src 'self';"
    " base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "geolocation=(), microphone=()",
    "Cache-Control": "no-store",
    "Server": "inspector",
}


def guard(opening: Opening, host: str, translate: Callable[[Say], str]) -> Middleware:
    """Nothing is handled that did not come to ``host`` (address and port), from its own page, and seldom enough."""

    @web.middleware
    async def guarded(request: web.Request, handler: Handler) -> web.StreamResponse:
        try:
            check(opening, host, request)
            return await handler(request)
        except Refused as refused:
            return _refusal(request, refused.status, translate(refused.said), translate(PAGE["title"]))
        except web.HTTPException as error:
            said = NOTHING_THERE if error.status in (404, 405) else NOT_UNDERSTOOD
            return _refusal(request, error.status, translate(said), translate(PAGE["title"]))
        except ConnectionError:
            raise
        except Exception:
            logging.getLogger(__name__).exception("The phone's page could not answer %s", request.path)
            return _refusal(request, 500, translate(FAULT), translate(PAGE["title"]))

    return guarded


def check(opening: Opening, host: str, request: web.Request) -> None:
    """The request may be looked at; raises Refused otherwise."""
    address = request.remote or ""
    if not opening.asks.passes(address) or opening.wrongs.left(address) < 1:
        raise Refused(429, TOO_OFTEN)
    if opening.ended:
        raise Refused(410, PAGE["ended"])
    if request.headers.getall("Host", []) != [host]:
        raise Refused(421, WRONG_HOST)
    origin = request.headers.get("Origin")
    if origin != f"http://{host}" and (origin is not None or request.method != "GET"):
        raise Refused(403, WRONG_ORIGIN)
    if request.method != "GET" and request.headers.get("Sec-Fetch-Site", "same-origin") != "same-origin":
        raise Refused(403, WRONG_ORIGIN)


def device_of(opening: Opening, request: web.Request) -> Device:
    """The device that asks; raises Refused for one that has not joined, or may not stay."""
    device = opening.devices.known(request.cookies.get(COOKIE, ""), opening.clock())
    if device is None:
        raise Refused(403, STRANGER)
    return device


async def add_headers(request: web.BaseRequest, response: web.StreamResponse) -> None:
    """Every answer forbids what the page does not need."""
    response.headers.update(HEADERS)


def _refusal(request: web.Request, status: int, sentence: str, title: str) -> web.Response:
    """The sentence, as a page where somebody looks at it and as data where the page itself asked."""
    if request.method == "GET" and "text/html" in request.headers.get("Accept", ""):
        answer = web.Response(status=status, text=refusal_page(sentence, title), content_type="text/html")
    else:
        answer = web.json_response({"sentence": sentence}, status=status)
    if request.can_read_body:
        answer.force_close()  # the rest of a body that is not wanted is not waited for
    return answer
