"""How taking in a photograph can end without one: each in one sentence for the person."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.texts import Say


@dataclass(frozen=True, slots=True)
class Refusal:
    """The file ``name`` is not taken; ``why`` says what is wrong with it and how to mend that."""

    name: str
    why: Say


class NotKept(Exception):
    """A keeper could not keep what it was given; ``said`` tells why and how to mend it."""

    def __init__(self, said: Say) -> None:
        super().__init__(said)
        self.said = said

    def __str__(self) -> str:
        return str(self.said)


class Cancelled(Exception):
    """The person stopped the work; what was done up to here stays done."""
