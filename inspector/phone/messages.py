"""What passes between the phone's page and whoever opened it: plain values, fit to cross threads."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, Protocol

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.texts import Say

Verb = Literal["back", "next", "pass", "doubt", "fail"]
VERBS: tuple[Verb, ...] = ("back", "next", "pass", "doubt", "fail")
Outcome = Literal["kept", "there", "refused"]


@dataclass(frozen=True, slots=True)
class View:
    """What every phone shows: the open item, in words that are ready to be read.

    ``mark`` is pass, doubt, fail or empty; ``photograph`` says what to photograph, one thing each.
    """

    record: str
    machine: str
    item: str
    name: str
    where: str
    question: str
    photograph: tuple[str, ...] = ()
    have: str = ""
    mark: str = ""
    caution: str = ""
    first: bool = False
    last: bool = False


@dataclass(frozen=True, slots=True)
class Sent:
    """The bytes of one photograph, the name the phone gave it, and the item that the phone showed."""

    name: str
    data: bytes
    record: str
    item: str
    device: int


@dataclass(frozen=True, slots=True)
class Press:
    """A key pressed on a phone that showed this item of this record."""

    verb: Verb
    record: str
    item: str
    device: int


@dataclass(frozen=True, slots=True)
class Fate:
    """What became of a photograph, and the sentence that says it."""

    outcome: Outcome
    sentence: str


@dataclass(frozen=True, slots=True)
class Guest:
    """One device that joined: its number, its address, whether its page is open, what it brought."""

    number: int
    address: str
    live: bool
    photographs: int


class Host(Protocol):
    """Whoever opened the page; everything here is called in the server's own thread.

    The answers may be given from any thread, once each.
    """

    def photograph(self, sent: Sent, answer: Callable[[Fate], None]) -> None:
        """A photograph has come in whole; ``answer`` takes its fate."""

    def press(self, press: Press, answer: Callable[[str], None]) -> None:
        """A key was pressed; ``answer`` takes an empty text, or the sentence that says why nothing was done."""

    def guests(self, guests: tuple[Guest, ...]) -> None:
        """The devices that joined are these now."""

    def ended(self, why: Say) -> None:
        """The page is closed, and by itself: this says why."""
