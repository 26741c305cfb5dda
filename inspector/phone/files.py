"""The handful of files that the page consists of, read once and served from memory: no folder is ever looked into."""

from __future__ import annotations

import html
import json
from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.phone.body import MEGABYTE
from inspector.phone.words import PAGE
from inspector.resource import resource

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.phone.devices import Device
    from inspector.phone.limits import Limits
    from inspector.texts import Say


@dataclass(frozen=True, slots=True)
class File:
    """One file as it is sent: its media type and its bytes."""

    media: str
    data: bytes


def fixed_files() -> dict[str, File]:
    """The files beside the page, each by its path on the server."""
    read = {
        "/page.css": ("text/css", resource("phone", "page.css")),
        "/page.js": ("text/javascript", resource("phone", "page.js")),
        "/icon.svg": ("image/svg+xml", resource("phone", "icon.svg")),
        "/regular.ttf": ("font/ttf", resource("fonts", "SourceSansPro-Regular.ttf")),
        "/semibold.ttf": ("font/ttf", resource("fonts", "SourceSansPro-Semibold.ttf")),
    }
    return {path: File(media, file.read_bytes()) for path, (media, file) in read.items()}


class Page:
    """The page, its words in the language of the window."""

    def __init__(self, translate: Callable[[Say], str], limits: Limits) -> None:
        self._template = resource("phone", "page.html").read_text("utf-8")
        self._words = {name: translate(said) for name, said in PAGE.items()}
        self._most = limits.file_bytes

    def for_device(self, device: Device) -> str:
        """The whole page as this device gets it."""
        words = {**self._words, "you": self._words["you"].replace("{number}", str(device.number))}
        shown = self._template
        for name, text in words.items():
            shown = shown.replace("{{" + name + "}}", html.escape(text))
        told = {"words": words, "most": self._most, "megabytes": self._most // MEGABYTE}
        return shown.replace("{{told}}", json.dumps(told).replace("<", "\\u003c"))


def refusal_page(sentence: str, title: str) -> str:
    """A page that says one sentence, for whoever came by a wrong address."""
    return (
        '<!doctype html><html><meta charset="utf-8"><meta name="viewport" content="width=device-width">'
        f"<title>{html.escape(title)}</title><h1>{html.escape(title)}</h1><p>{html.escape(sentence)}</p></html>"
    )
