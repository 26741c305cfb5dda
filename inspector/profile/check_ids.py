"""Names that a profile gives twice, uses without giving, or chains in a ring."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from inspector.profile.base import Cited
from inspector.profile.explain import offer
from inspector.profile.items import Cost, Heading, Item, Job, Measure, SerialSpan, Shot, Trap, Variant
from inspector.profile.model import Profile
from inspector.profile.numbers import Place, Relation
from inspector.profile.problem import Flaw, Where
from inspector.profile.walk import costs, items, parts
from inspector.texts import say

Named = Iterable[tuple[Where, str]]
Known = Mapping[str, object]  # by id, in the order of the profile


def duplicate_ids(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """An id that two parts of one kind share."""
    for kind, named in _scopes(profile):
        seen: set[str] = set()
        for where, name in named:
            if name in seen:
                yield Flaw(
                    (*where, "id"),
                    say('the {kind} id "{id}" is used twice.', kind=kind, id=name),
                    say("give one of the two another id."),
                )
            seen.add(name)


def _scopes(profile: Profile) -> Iterator[tuple[str, Named]]:
    for kind in ("source", "place", "station", "job", "shot", "trap"):
        held = getattr(profile, f"{kind}s")
        yield kind, [((kind, n), one.id) for n, one in enumerate(held)]
    if profile.points:
        heads = enumerate(profile.points.headings)
        yield "heading", [(("points", "heading", n), one.id) for n, one in heads]
    yield "item", [(where, item.id) for where, item in items(profile)]
    yield "cost", [(where, cost.id) for where, cost in costs(profile)]
    for where, item in items(profile):
        yield "variant", [((*where, "variant", n), v.id) for n, v in enumerate(item.variants)]
        yield "measure", [((*where, "measure", n), m.id) for n, m in enumerate(item.measures)]
    for p, place in enumerate(profile.places):
        yield from _rule_scopes(("place", p), place)


def _rule_scopes(where: Where, place: Place) -> Iterator[tuple[str, Named]]:
    rules = [((*where, "rule", r), rule) for r, rule in enumerate(place.rules)]
    yield "rule", [(at, rule.id) for at, rule in rules]
    for at, rule in rules:
        yield "segment", [((*at, "segment", s), one.id) for s, one in enumerate(rule.segments)]


def unknown_ids(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """An id that names nothing of its kind."""
    known = _known(profile)
    for where, part in parts(profile):
        if isinstance(part, Cited):
            for n, name in enumerate(part.sources):
                yield from _missing("source", name, (*where, "sources", n), known)
        for kind, key, names in _uses(part):
            for used in names:
                yield from _missing(kind, used, (*where, key), known)
        if isinstance(part, Item):
            yield from _nominals(part, where)


def _known(profile: Profile) -> dict[str, Known]:
    return {
        "source": profile.source_by_id,
        "place": profile.place_by_id,
        "item": profile.item_by_id,
        "job": _ids(profile.jobs),
        "remedy": _ids(cost for _, cost in costs(profile)),
        "heading": _ids(profile.points.headings if profile.points else ()),
    }


def _ids(parts: Iterable[Job | Cost | Heading | Variant]) -> Known:
    return dict.fromkeys(part.id for part in parts)


def _uses(part: object) -> Iterator[tuple[str, str, tuple[str | None, ...]]]:
    """Kind of thing, key, and the ids that this part names under the key."""
    match part:
        case Item():
            yield "place", "place", (part.place,)
            yield "heading", "heading", (part.heading,)
        case Cost():
            yield "job", "job", (part.job,)
            yield "remedy", "after", part.after
            yield "remedy", "excludes", part.excludes
        case Shot():
            yield "item", "item", (part.item,)
            yield "place", "place", (part.place,)
        case Trap():
            yield "item", "items", part.items
            yield "place", "places", part.places
        case Relation():
            yield "place", "places", part.places
        case SerialSpan():
            yield "place", "place", (part.place,)


def _missing(kind: str, name: str | None, where: Where, known: Mapping[str, Known]) -> Iterator[Flaw]:
    if name is not None and name not in known[kind]:
        what = say('no {kind} has the id "{id}".', kind=kind, id=name)
        yield Flaw(where, what, offer(name, known[kind]))


def _nominals(item: Item, where: Where) -> Iterator[Flaw]:
    known = {"variant": _ids(item.variants)}
    for m, measure in enumerate(item.measures):
        yield from _nominals_of(measure, (*where, "measure", m), known)


def _nominals_of(measure: Measure, where: Where, known: Mapping[str, Known]) -> Iterator[Flaw]:
    for n, nominal in enumerate(measure.nominals):
        yield from _missing("variant", nominal.variant, (*where, "nominal", n, "variant"), known)


def cycles(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """Jobs that need each other in a ring, and remedies that each wait for the other."""
    jobs = {job.id: job.needs for job in profile.jobs}
    waiting = _without_end(jobs)
    for n, job in enumerate(profile.jobs):
        if _returns(job.id, waiting):
            yield _ring(("job", n, "needs"), job.id)
        for name in job.needs:
            if name not in jobs:
                what = say('no job has the id "{id}".', id=name)
                yield Flaw(("job", n, "needs"), what, offer(name, jobs))
    waiting = _without_end({cost.id: cost.after for _, cost in costs(profile)})
    for where, cost in costs(profile):
        if _returns(cost.id, waiting):
            yield _ring((*where, "after"), cost.id)


def _without_end(onward: Mapping[str, tuple[str, ...]]) -> dict[str, tuple[str, ...]]:
    """The names from which one can go on for ever: all on a ring, and those that lead to one."""
    before: dict[str, list[str]] = {}
    for name, then in onward.items():
        for one in set(then) & onward.keys():
            before.setdefault(one, []).append(name)
    left = {name: len(set(then) & onward.keys()) for name, then in onward.items()}
    ended = [name for name, count in left.items() if not count]
    for name in ended:
        for one in before.get(name, ()):
            left[one] -= 1
            if not left[one]:
                ended.append(one)  # grows while it is walked: the ends of what is left
    return {name: then for name, then in onward.items() if left[name]}


def _returns(start: str, onward: Mapping[str, tuple[str, ...]]) -> bool:
    """True when following the names from start leads back to it."""
    seen: set[str] = set()
    waiting = list(onward.get(start, ()))
    while waiting:
        name = waiting.pop()
        if name == start:
            return True
        if name not in seen:
            seen.add(name)
            waiting.extend(onward.get(name, ()))
    return False


def _ring(where: Where, name: str) -> Flaw:
    return Flaw(
        where,
        say('"{id}" waits for itself, directly or through others.', id=name),
        say("take one name out of the ring."),
    )
