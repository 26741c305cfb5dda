"""Strip-downs that remedies share: which are needed, and what stands behind each."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.judgement.reckoned import Way
    from inspector.profile.items import Job
    from inspector.profile.model import Profile


def with_needs(profile: Profile, job: str) -> tuple[str, ...]:
    """The job and all that must be done before it, in the order of the work; empty for no job or an unknown one."""
    return _chains(profile).get(job, ())


def needed(profile: Profile, ways: Iterable[Way]) -> tuple[Job, ...]:
    """Every strip-down that these ways need, each once, in the profile's order."""
    wanted = {job for way in ways for job in with_needs(profile, way.job)}
    return tuple(job for job in profile.jobs if job.id in wanted)


def serves(profile: Profile, job: str, ways: Iterable[Way]) -> tuple[str, ...]:
    """The names of the ways for which the job has to be done."""
    return tuple(way.name for way in ways if job in with_needs(profile, way.job))


def _chains(profile: Profile) -> dict[str, tuple[str, ...]]:
    key = ("strip-downs", "", "")
    if key not in profile.worked_out:
        known = {one.id: one for one in profile.jobs}
        found: dict[str, tuple[str, ...]] = {}
        for job in known:
            order: dict[str, None] = {}
            _collect(job, known, order, ())
            found[job] = tuple(order)
        profile.worked_out[key] = found
    chains: dict[str, tuple[str, ...]] = profile.worked_out[key]
    return chains


def _collect(job: str, known: dict[str, Job], order: dict[str, None], above: tuple[str, ...]) -> None:
    if job not in known or job in order or job in above:
        return
    for need in known[job].needs:
        _collect(need, known, order, (*above, job))
    order[job] = None
