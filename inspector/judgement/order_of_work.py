"""The order of work: strip-downs before what they serve, what others wait for before them, safety first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.jobs import needed, serves, with_needs
from inspector.judgement.reckoned import Work
from inspector.judgement.wording import joined
from inspector.profile.words import Need, PartKind
from inspector.texts import say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.reckoned import Way
    from inspector.profile.model import Profile
    from inspector.texts import Say

RANK = {Need.SAFETY: 0, Need.CLAIM: 1, Need.TASTE: 2}
Rank = tuple[int, int]


def order_of_work(profile: Profile, ways: Sequence[Way]) -> tuple[Work, ...]:
    """Every strip-down once and every way that is work, each after all that must come before it.

    Of what could be next, ways behind a strip-down already done come first, then safety before claim before taste,
    then the order of the walk. Ways that leave things as they are are no work.
    """
    doing = {way.key: way for way in ways if way.kind is not PartKind.LEAVE}
    jobs = {"job " + job.id: job.name for job in needed(profile, doing.values())}
    before, rank = _before(profile, doing), _ranks(profile, doing)
    done: list[str] = []
    while len(done) < len(before):
        left = [node for node in before if node not in done]
        ready = [node for node in left if before[node] <= set(done)]
        # A ring of remedies that wait for each other has no order; checking the profile names it.
        done.append(min(ready or left, key=lambda node: (not (node in doing and doing[node].job), rank[node])))
    return tuple(_work(profile, node, jobs, doing) for node in done)


def _before(profile: Profile, doing: dict[str, Way]) -> dict[str, set[str]]:
    """What must be done before each strip-down and way."""
    before: dict[str, set[str]] = {}
    keys = {way.cost: key for key, way in doing.items()}
    for key, way in doing.items():
        chain = ["job " + job for job in with_needs(profile, way.job)]
        before[key] = {*chain, *(keys[a] for a in way.after if a in keys)}
        for job in chain:
            before[job] = {"job " + need for need in with_needs(profile, job.removeprefix("job "))} - {job}
    return before


def _ranks(profile: Profile, doing: dict[str, Way]) -> dict[str, Rank]:
    """Need, then place in the walk; a strip-down takes the best rank of the ways it serves."""
    ranks = {key: (RANK[way.need], at) for at, (key, way) in enumerate(doing.items())}
    for job in needed(profile, doing.values()):
        ranks["job " + job.id] = min(
            ranks[key] for key, way in doing.items() if job.id in with_needs(profile, way.job)
        )
    return ranks


def _work(profile: Profile, node: str, jobs: dict[str, str], doing: dict[str, Way]) -> Work:
    if node in jobs:
        job = node.removeprefix("job ")
        behind = _names(serves(profile, job, doing.values()))
        return Work(jobs[node], job, None, say("Paid once, for: {ways}.", ways=behind))
    way = doing[node]
    first = [other.name for other in doing.values() if other.cost in way.after]
    if first:
        return Work(way.name, way.job, way, say("After: {ways}.", ways=_names(first)))
    return Work(way.name, way.job, way, say("For {need}.", need=say(way.need.value)))


def _names(names: Sequence[str]) -> Say:
    return joined(list(names), "; ")
