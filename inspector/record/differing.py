"""Where two versions of a record differ, in words: by item, number and paper."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from inspector.profile.model import Profile
from inspector.record.finding import Finding
from inspector.record.model import Record
from inspector.record.reading import Reading
from inspector.record.versions import handed_over
from inspector.texts import Say, say

Named = Callable[[Any], Say | str]

PLAIN: tuple[tuple[str, str, Say], ...] = (  # the part, what names an entry of it, and what an entry is called
    ("people", "name", say("Person")),
    ("papers", "name", say("Paper")),
    ("inquiries", "about", say("Asked of others")),
    ("statements", "text", say("Statement")),
    ("questions", "text", say("Open question")),
)
WORDS = {
    "fitted": say("form fitted"), "fitted_other": say("form fitted"), "conclusions": say("why"),
    "evidence": say("how it shows"), "book": say("book"), "measured": say("measurement"),
    "material": say("magnet, tap and underside"), "conditions": say("condition"), "note": say("note"),
    "next_step": say("next step"), "reply": say("reply"),
    "unsafe": say("unsafe or not"), "stamping": say("what was seen of the stamping"),
    "how_read": say("how it was read"),
    "cleaned": say("cleaned or not"), "leave_of": say("whose leave"), "quoted": say("number quoted"),
    "state": say("state"), "named": say("who is named"), "dated": say("date"), "date": say("date"),
    "interest": say("interests"), "role": say("part in this"), "name": say("name"), "body": say("who was asked"),
    "sent": say("what was sent"), "text": say("words"), "medium": say("how it was said"), "by": say("who said it"),
    "closed": say("how it was settled"), "item": say("item"), "about": say("what it is about"),
}  # fmt: skip
SILENT = {"at", "id"}
MANY = 90  # letters of a text that are told


def differences(profile: Profile, old: Record, new: Record) -> tuple[Say, ...]:
    """Every difference of what is handed over, the older first, in the order of the sheet; empty where there is none.

    Signatures and versions are not differences: they stand on the sheet as what they are.
    """
    old, new = handed_over(old), handed_over(new)
    return (
        *_claim(old, new),
        *_findings(profile, old, new),
        *_readings(profile, old, new),
        *(line for part, name, kind in PLAIN for line in _plain(old, new, part, name, kind)),
        *_photographs(profile, old, new),
        *_choices(old, new),
    )


def _claim(old: Record, new: Record) -> Iterator[Say]:
    for field in type(new.claim).model_fields:
        was, now = getattr(old.claim, field), getattr(new.claim, field)
        if field == "place" and was and not new.choices.place_told:
            yield say("Where it was looked at is not told on this sheet any more.")
        elif was != now:
            name = field.replace("_", " ")
            yield say("Claim, {field}: now {now}, before {was}.", field=name, now=_quoted(now), was=_quoted(was))


def _findings(profile: Profile, old: Record, new: Record) -> Iterator[Say]:
    walk = {item.id: n for n, item in enumerate(profile.items())}
    pairs = _pairs(old.findings, new.findings, "key")
    for was, now in sorted(pairs, key=lambda two: walk.get(_either(two).item, len(walk))):
        one = now or was
        if one is None:
            continue
        name = _item(profile, one.item)
        who = new.name_of(one.by)
        yield from _finding(say("{item} ({who})", item=name, who=who), was, now)


def _finding(name: Say, was: Finding | None, now: Finding | None) -> Iterator[Say]:
    if now is None:
        yield say("{name}: the finding was taken out.", name=name)
    elif was is None:
        yield say("{name}: {now}; nothing was noted before.", name=name, now=_marked(now))
    elif _marked(was) != _marked(now):
        yield say("{name}: now {now}, before {was}.", name=name, now=_marked(now), was=_marked(was))
        yield from _fields(name, was, now, {"mark", "seen", "item", "by"})
    else:
        yield from _fields(name, was, now, {"mark", "seen", "item", "by"})


def _marked(finding: Finding) -> Say:
    return say(finding.mark.value if finding.mark else finding.seen.value)


def _readings(profile: Profile, old: Record, new: Record) -> Iterator[Say]:
    places = {place.id: place.name for place in profile.places}
    for was, now in _pairs(old.readings, new.readings, "id"):
        one = now or was
        if one is None:
            continue
        name = say("Number at {place}", place=places.get(one.place, one.place))
        if now is None:
            yield say("{name}: the reading {was} was taken out.", name=name, was=_read(was))
        elif was is None:
            yield say("{name}: read as {now}; this reading was not there before.", name=name, now=_read(now))
        else:
            if _read(was) != _read(now):
                yield say("{name}: now read as {now}, before {was}.", name=name, now=_read(now), was=_read(was))
            yield from _fields(name, was, now, {"figures", "place"})


def _read(reading: Reading | None) -> Say | str:
    return "" if reading is None else reading.typed() or say(reading.state.value)


def _plain(old: Record, new: Record, part: str, named: str, kind: Say) -> Iterator[Say]:
    for was, now in _pairs(getattr(old, part), getattr(new, part), "id"):
        name = say("{kind} {name}", kind=kind, name=_quoted(getattr(now or was, named)))
        if now is None:
            yield say("{name}: taken out.", name=name)
        elif was is None:
            yield say("{name}: added.", name=name)
        else:
            yield from _fields(name, was, now, set())


def _photographs(profile: Profile, old: Record, new: Record) -> Iterator[Say]:
    had, has = {p.id: p for p in old.photographs}, {p.id: p for p in new.photographs}
    for template, names in (
        (say("added"), [has[key].item for key in has if key not in had]),
        (say("taken out"), [had[key].item for key in had if key not in has]),
        (say("changed in what is noted of them"), [has[k].item for k in has if k in had and has[k] != had[k]]),
    ):
        for item in dict.fromkeys(names):
            where = _item(profile, item) if item else say("no item")
            yield say("Photographs, {where}: {count} {what}.", where=where, count=names.count(item), what=template)


def _choices(old: Record, new: Record) -> Iterator[Say]:
    if old.choices.pattern_parts is not new.choices.pattern_parts:
        yield say(
            "Pattern parts are now {now}, before {was}.",
            now=say(new.choices.pattern_parts.value),
            was=say(old.choices.pattern_parts.value),
        )
    if old.choices.points != new.choices.points:
        yield say("The points scheme is shown now.") if new.choices.points else say("No points scheme is shown now.")


def _fields(name: Say, was: Any, now: Any, told: set[str]) -> Iterator[Say]:
    changed = [f for f in type(now).model_fields if f not in told | SILENT and getattr(was, f) != getattr(now, f)]
    words = list(dict.fromkeys(str(WORDS.get(f, say(f.replace("_", " ")))) for f in changed))
    if words:
        yield say("{name}: changed in {what}.", name=name, what=", ".join(words))


def _pairs(old: tuple[Any, ...], new: tuple[Any, ...], key: str) -> list[tuple[Any, Any]]:
    """The entries of both by key, the new order first, None where one side has it not; equal ones are left out."""
    had, has = {getattr(e, key): e for e in old}, {getattr(e, key): e for e in new}
    pairs = [(had.get(k), has.get(k)) for k in dict.fromkeys([*has, *had])]
    return [(was, now) for was, now in pairs if was != now]


def _either(two: tuple[Any, Any]) -> Any:
    return two[1] or two[0]


def _item(profile: Profile, item: str) -> str:
    found = profile.item_by_id.get(item)
    return found.name if found else item


def _quoted(value: Any) -> Say | str:
    text = " ".join(str("" if value is None else value).split())
    if not text:
        return say("not stated")
    return f"“{text[:MANY]}…”" if len(text) > MANY else f"“{text}”"
