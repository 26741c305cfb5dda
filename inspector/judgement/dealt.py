"""What a deal says: what it comes to, the prices that keep limit and margin, what may be said, parts to look for.

Amounts are in the currency told, and None is "not known", as in ``reckoned``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from decimal import Decimal

    from inspector.judgement.reckoned import Costs, Spread, Three, Worth
    from inspector.profile.words import Need
    from inspector.texts import Say


@dataclass(frozen=True, slots=True)
class DealLine:
    """One line of the all-in sum: its name, low, likely, high, and what it was worked out from."""

    name: Say
    amount: Three
    words: Say | None = None


@dataclass(frozen=True, slots=True)
class Hammer:
    """The highest hammer price for an all-in limit, whole and rounded down, and what the sum then comes to."""

    limit: Decimal
    price: Decimal
    comes_to: Decimal
    with_high: Decimal
    words: Say


@dataclass(frozen=True, slots=True)
class Keeping:
    """The highest price that keeps the margin, at the middle and low end of the worth put right (else as it stands).

    None where no price does. ``exceeded`` is the share of simulated cases, 0 to 1, in which putting right costs more
    than reckoned there, so that the margin is not kept.
    """

    margin: Decimal
    at_middle: Decimal | None
    at_low_end: Decimal | None
    exceeded: float | None
    words: tuple[Say, ...]


@dataclass(frozen=True, slots=True)
class TalkingPoint:
    """Something found that may be said: what it is for, in words, how it shows, who says what is right, its cost."""

    need: Need
    item: str
    name: str
    sentence: Say
    evidence: tuple[Say, ...]
    sources: tuple[Say, ...]
    cost: Three | None
    cost_words: Say


@dataclass(frozen=True, slots=True)
class Talking:
    """What may be said, by what it is for, each in the order of the walk."""

    safety: tuple[TalkingPoint, ...]
    claim: tuple[TalkingPoint, ...]
    taste: tuple[TalkingPoint, ...]


@dataclass(frozen=True, slots=True)
class Deal:
    """All in at the price asked. ``left_*`` is worth put right (as it stands where nothing gains) less all in.

    ``bought`` is the price with premium, tax, transport and fees, nothing put right; ``stands_*`` is worth as it
    stands less that. ``opening``, ``target`` and ``walk_away`` stand as the user entered them; nothing is proposed.
    """

    currency: str
    lines: tuple[DealLine, ...]
    all_in: Three | None
    spread: Spread | None
    not_in_it: tuple[Say, ...]
    left_at_middle: Decimal | None
    left_at_low_end: Decimal | None
    left_words: Say
    hammer: Hammer | None
    keeping: Keeping | None
    opening: Decimal | None
    target: Decimal | None
    walk_away: Decimal | None
    offered: str
    reasons: tuple[Say, ...]
    bought: Decimal | None = None
    stands_at_middle: Decimal | None = None
    stands_at_low_end: Decimal | None = None
    stands_words: Say | None = None


@dataclass(frozen=True, slots=True)
class Reckoning:
    """Costs, worth, deal, what may be said and parts offered; a plan is worked out on its own, as it takes longer."""

    currency: str
    costs: Costs
    worth: Worth
    deal: Deal
    talking: Talking
    offers: tuple[PartOffered, ...] = ()


@dataclass(frozen=True, slots=True)
class PartOffered:
    """A part offered for ``price`` (told; None where none, or no rate), against ``expected``, in ``words``.

    ``part`` is the key of the way that it serves, "" where none; ``whose`` says who expects so, ``by`` who offers.
    """

    id: str
    part: str
    name: Say
    as_entered: Decimal | None
    currency: str
    price: Decimal | None
    expected: Three | None
    whose: Say | None
    by: Say | None
    words: Say


@dataclass(frozen=True, slots=True)
class Want:
    """One part to look for: what it is, how it is told, what is not to be bought, and what it may cost.

    ``key`` is that of the way it serves.
    """

    key: str
    item: str
    name: str
    looking_for: str
    spec: tuple[str, ...]
    how_to_tell: tuple[str, ...]
    not_to_buy: tuple[Say, ...]
    fair: Three | None
    price_words: Say
    decided: bool
