"""The photographs of a record in the order of the list, with the words of each row."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from inspector.profile.model import Profile
from inspector.record.finding import Photograph
from inspector.record.words import Cleaning
from inspector.storage.photographs import State
from inspector.texts import tr, trn

ALL, LOOSE, NUMBERS, ITEMS, TROUBLE = "all", "not assigned", "numbers", "items", "trouble"
PAIR = {Cleaning.NOT.value: 1, Cleaning.BEFORE.value: 2, Cleaning.AFTER.value: 3}
FEW = 20  # so many that changed are put in their places one by one
BAD = {State.MISSING, State.CHANGED, State.UNREADABLE}


class Entry(NamedTuple):
    """One row: the photograph, what it belongs to, and whether it is the first of those."""

    photograph: Photograph
    group: str
    first: bool

    @property
    def second(self) -> str:
        """Its caption, or the name of its file."""
        return self.photograph.caption or self.photograph.name

    @property
    def third(self) -> str:
        """When by the camera's clock, and by which camera."""
        photograph = self.photograph
        when = photograph.taken_at[:16].replace("T", " ") or tr("no time in the file")
        return f"{when}, {photograph.camera}" if photograph.camera else when


def arranged(profile: Profile, photographs: Iterable[Photograph]) -> list[Entry]:
    """Those not assigned, then by numbered place, then by item in the order of the walk; each by its time."""
    groups: dict[tuple[str, str], list[Photograph]] = {}
    for one in photographs:
        groups.setdefault((one.item, one.place), []).append(one)
    ties = [("", ""), *(("", place.id) for place in profile.places), *((item, "") for item in profile.item_by_id)]
    ranks = {tie: n for n, tie in enumerate(ties)}
    entries: list[Entry] = []
    for tie in sorted(groups, key=lambda tie: (ranks.get(tie, len(ranks)), tie)):
        group = sorted(groups[tie], key=lambda one: (PAIR.get(one.cleaned, 0), one.taken_at))
        words = tied_words(profile, group[0])
        entries += [Entry(one, words, n == 0) for n, one in enumerate(group)]
    return entries


def patched_entries(
    before: tuple[Photograph, ...] | None, now: tuple[Photograph, ...], entries: list[Entry]
) -> list[Entry] | None:
    """The rows of before with a few photographs in their new form; None where their order may be another."""
    if before is now:
        return entries
    if before is None or len(before) != len(now):
        return None
    changed = {id(old): new for old, new in zip(before, now, strict=True) if old is not new}
    olds = [old for old in before if id(old) in changed]
    if len(changed) > FEW or any(_place(old) != _place(changed[id(old)]) for old in olds):
        return None
    return [e._replace(photograph=changed.get(id(e.photograph), e.photograph)) if id(e.photograph) in changed else e
            for e in entries]  # fmt: skip


def _place(one: Photograph) -> tuple[str, ...]:
    """What tells where its row stands."""
    return one.id, one.item, one.place, one.cleaned, one.taken_at


def tied_words(profile: Profile, photograph: Photograph) -> str:
    """What the photograph belongs to, in words."""
    place = profile.place_by_id.get(photograph.place)
    item = profile.item_by_id.get(photograph.item)
    if place is not None and item is not None:
        return tr("{place}, {item}", place=place.name, item=item.name)
    if place is not None or item is not None:
        found = place or item
        return found.name if found is not None else ""
    return photograph.place or photograph.item or tr("Not yet assigned")


def chosen(entries: list[Entry], words: str, which: str, states: Mapping[str, State]) -> list[Entry]:
    """The rows of this kind in which every word occurs."""
    wanted = words.casefold().split()
    if not wanted and which == ALL:
        return entries
    kept = [e for e in entries if _is(e.photograph, which, states)]
    kept = [e for e in kept if all(w in text for text in (_text(e),) for w in wanted)] if wanted else kept
    groups = [(e.photograph.item, e.photograph.place) for e in kept]
    return [Entry(e.photograph, e.group, n == 0 or groups[n - 1] != groups[n]) for n, e in enumerate(kept)]


def _text(entry: Entry) -> str:
    one = entry.photograph
    return " ".join((entry.group, one.name, one.caption, one.taken_at, one.camera, one.light, one.cleaned)).casefold()


def _is(one: Photograph, which: str, states: Mapping[str, State]) -> bool:
    if which == LOOSE:
        return not one.item and not one.place
    if which == NUMBERS:
        return bool(one.place)
    if which == ITEMS:
        return bool(one.item)
    return which != TROUBLE or states.get(one.sha256) in BAD


def state_words(state: State | None) -> str:
    """What became of the kept file, where that is not as it should be."""
    words = {
        State.MISSING: tr("the kept photograph is gone"),
        State.CHANGED: tr("the kept photograph was changed"),
        State.UNREADABLE: tr("the kept photograph cannot be read"),
    }
    return words.get(state, "") if state is not None else ""


def aside_of(photograph: Photograph, state: State | None) -> str:
    """What stands at the right of its row: trouble first, then what is known of a number's photograph."""
    if trouble := state_words(state):
        return trouble
    parts = [tr(photograph.cleaned)] if photograph.cleaned else []
    if photograph.masks:
        parts.append(trn("{count} part covered", "{count} parts covered", len(photograph.masks)))
    return ", ".join(parts)
