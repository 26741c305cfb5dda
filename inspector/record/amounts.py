"""An amount of money, hours or a percentage as people type it."""

from __future__ import annotations

from decimal import Decimal

from inspector.record.csv_cells import number, plain
from inspector.record.edits import EditRefused
from inspector.texts import Say, say

SIGNS = ("£", "€", "$", "%")
MOST_FIGURES = 20


def amount_of(text: str, *, signed: bool = False, thousands: bool = True) -> Decimal | None:
    """The amount typed, with decimal point or comma; None where nothing was typed.

    ``signed`` lets it be below nought; without ``thousands`` a point or comma before three figures is the decimal
    one, as in hours. Raises EditRefused with one sentence that says what stands there and how to mend it.
    """
    left = plain(text)
    for sign in SIGNS:
        left = left.replace(sign, "").strip()
    if not left:
        return None
    below = left.startswith("-")
    bare = left.removeprefix("-" if below else "+").strip()
    found = number(bare, thousands=thousands) if len(left) <= MOST_FIGURES else None
    if found is None:
        raise EditRefused(_refused(say('"{text}" is not an amount. Write only figures, such as 7400.', text=text[:60])))
    if below and not signed:
        raise EditRefused(_refused(say('"{text}" is below nought. Write it without the minus.', text=text[:60])))
    return -found if below else found


def _refused(sentence: Say) -> Say:
    return say("{sentence} Nothing was changed.", sentence=sentence)
