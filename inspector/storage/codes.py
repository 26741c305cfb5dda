"""Short names that are read aloud and typed again without mistakes."""

from __future__ import annotations

import secrets

ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"  # no I, L, O, U: they are taken for 1, 1, 0 and V
LENGTH = 8


def new_record_id() -> str:
    """Eight characters that no other record bears (one chance in 32 to the power of 8), fit for a file name."""
    return "".join(secrets.choice(ALPHABET) for _ in range(LENGTH))
