"""The ways offered to put each item right: the profile's with the user's figures over them, and the user's own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.reckoned import Way
from inspector.judgement.wording import name_of
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.judgement.exchange import Exchange
    from inspector.profile.items import Cost
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.money import Figures, Remedy


def offered(profile: Profile, record: Record, at: Exchange) -> dict[str, tuple[Way, ...]]:
    """The ways at every item by its id, in the profile's order, the user's own last; items without ways left out."""
    entries = {(r.item, r.cost): r for r in record.remedies}
    known = {(item.id, cost.id): cost for item in profile.items() for cost in item.costs}
    found: dict[str, list[Way]] = {}
    for (item, cost_id), cost in known.items():
        found.setdefault(item, []).append(_of_profile(profile, item, cost, entries.get((item, cost_id)), at))
    for key, entry in entries.items():
        if key not in known and entry.figures is not None:
            found.setdefault(entry.item, []).append(_own(profile, entry, entry.figures, at))
    return {item: tuple(ways) for item, ways in found.items()}


def unknown_entries(profile: Profile, record: Record) -> tuple[Say, ...]:
    """The user's choices of remedies that this profile does not have, one sentence each."""
    known = {(item.id, cost.id) for item in profile.items() for cost in item.costs}
    return tuple(
        say(
            'The profile has no remedy "{cost}" at {item}: it is not counted. Enter figures for it or take it out.',
            cost=r.cost, item=name_of(profile, r.item),
        )
        for r in record.remedies
        if r.figures is None and (r.item, r.cost) not in known
    )  # fmt: skip


def _of_profile(profile: Profile, item: str, cost: Cost, entry: Remedy | None, at: Exchange) -> Way:
    choice = entry.chosen if entry else None
    if entry is not None and entry.figures is not None:
        return _entered(profile, entry, entry.figures, at, cost)
    currency = cost.currency or profile.currency
    return Way(
        f"{item}/{cost.id}", item, name_of(profile, item), cost.id, cost.name, cost.kind, cost.need,
        at.three(cost.parts, currency), cost.hours, currency, cost.priced_on, _sources(profile, cost),
        *_job(profile, cost.job or ""), cost.after, cost.excludes, cost.lead_weeks, cost.note, choice, False, False,
        at.trouble(currency) if cost.parts else None,
    )  # fmt: skip


def _own(profile: Profile, entry: Remedy, figures: Figures, at: Exchange) -> Way:
    return _entered(profile, entry, figures, at, None)


def _entered(profile: Profile, entry: Remedy, figures: Figures, at: Exchange, cost: Cost | None) -> Way:
    trouble = at.trouble(figures.currency) if figures.parts else None
    if figures.job and not _job(profile, figures.job)[0]:
        trouble = say('The profile has no strip-down "{job}": none is counted for {name}.', job=figures.job,
                      name=figures.name)  # fmt: skip
    return Way(
        entry.key, entry.item, name_of(profile, entry.item), entry.cost, figures.name, figures.kind, figures.need,
        at.three(figures.parts, figures.currency), figures.hours, figures.currency or at.currency, figures.priced_on,
        figures.source, *_job(profile, figures.job), cost.after if cost else (), cost.excludes if cost else (),
        figures.lead_weeks, figures.note, entry.chosen, cost is None, True, trouble,
    )  # fmt: skip


def _job(profile: Profile, job: str) -> tuple[str]:
    return (job if any(j.id == job for j in profile.jobs) else "",)


def _sources(profile: Profile, cost: Cost) -> str:
    titles = [profile.source_by_id[s].title for s in cost.sources if s in profile.source_by_id]
    return ", ".join([*titles, *([cost.at] if cost.at else [])])
