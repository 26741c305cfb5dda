"""Costs, worth, deal, talking points and parts offered of one record in one answer.

Private: nothing of it belongs on the seller's copy.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.cost import costs
from inspector.judgement.deal import deal
from inspector.judgement.dealt import Reckoning
from inspector.judgement.part_offers import part_offers
from inspector.judgement.state import states
from inspector.judgement.talking import talking
from inspector.judgement.worth import worth

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.model import Record


def money(profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None) -> Reckoning:
    """What it costs, what it is worth by the entries, and what the deal comes to; a plan is asked for on its own."""
    at = states(profile, record) if known is None else known
    spent = costs(profile, record, at)
    valued = worth(profile, record, spent)
    points, offers = talking(profile, record, at, spent), part_offers(profile, record)
    return Reckoning(spent.currency, spent, valued, deal(record, spent, valued), points, offers)
