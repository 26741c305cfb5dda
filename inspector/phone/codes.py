"""The code in the address: unguessable, fit to be typed, and good for a while only."""

from __future__ import annotations

import hmac
import secrets
from dataclasses import dataclass

# Crockford's base 32: no letter is there that can be read as a figure.
LETTERS = "0123456789abcdefghjkmnpqrstvwxyz"
LENGTH = 28  # 5 bits a letter: 140 bits
GROUP = 4
_READ_AS = str.maketrans({"o": "0", "i": "1", "l": "1", "-": None})


def new_code() -> str:
    """A code of 140 random bits in small letters and figures."""
    return "".join(secrets.choice(LETTERS) for _ in range(LENGTH))


def spaced(code: str) -> str:
    """The code in groups that can be kept in mind while they are typed."""
    return "-".join(code[at : at + GROUP] for at in range(0, len(code), GROUP))


def as_read(typed: str) -> str:
    """The code that was meant by what was typed: letters of any size, hyphens anywhere, o for 0, i and l for 1."""
    return typed.lower().translate(_READ_AS)


@dataclass(slots=True)
class Code:
    """The code that lets devices join until a moment of the server's clock, in seconds."""

    text: str
    until: float

    def fits(self, typed: str) -> bool:
        """Whether that is this code; it takes as long whether it is or not."""
        return hmac.compare_digest(as_read(typed).encode(), self.text.encode())
