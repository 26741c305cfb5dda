"""A bag to hand to others: no money, no place, photographs as sharing copies; it says what was left out."""

from __future__ import annotations

import hashlib
import re
import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inspector.packing import layout
from inspector.packing.pack import Packed, info, profile_files, readable_profile
from inspector.packing.summary import summary_files
from inspector.photo.masks import Cover
from inspector.photo.probe import probe
from inspector.photo.refusal import Refusal
from inspector.photo.sharing import sharing_copy
from inspector.record.joining import CLAIM_SAID
from inspector.record.model import Record
from inspector.record.versions import without_money
from inspector.record.words import Covered
from inspector.storage.bags.writing import BagFile, write_bag
from inspector.storage.landing import land, write_unfinished
from inspector.storage.photographs import Missing
from inspector.storage.whole import Whole
from inspector.texts import Say, say, tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.record.finding import Photograph
    from inspector.storage.bags.writing import Report
    from inspector.storage.library import Library

BY_HAND = frozenset({"note", "text", "reply", "next_step", "caption", "advertised", "titled", "closed", "sent", "body",
                     "about", "book", "fitted_other", "statement", "medium", "conditions", "named", "name", "market",
                     "light", "cleaned", "leave_of", "interest", "first_registration"})  # fmt: skip
PLACE_SAID = f"{CLAIM_SAID}place: "
LEFT = "…"  # no longer than what it stands for, so that what fitted fits
MOST_LINE = 500
SHORTEST_PLACE = 4  # letters of a part of an address that is looked for by itself
ASIDE = re.compile(r"\s*\([^)]*\)\s*$")


@dataclass(frozen=True, slots=True)
class Sharing:
    """What the person chose: whether names stay, and which photographs go along (None: all of them)."""

    names: bool = True
    photographs: frozenset[str] | None = None


def pack_to_share(
    library: Library, record_id: str, target: Path, sharing: Sharing = Sharing(),
    report: Report = lambda done, total, name: None,
) -> Packed:  # fmt: skip
    """A sharing bag of a record stands at the target: readable and complete in itself, with nothing private in it.

    ``report`` may raise to stop. Raises StorageTrouble; what stood at the target is untouched then.
    """
    loaded = library.load(record_id)
    profile = readable_profile(loaded.profile_folder)
    record, left_out = to_share(loaded.record, sharing)
    with tempfile.TemporaryDirectory() as scratch:
        record, paths, lost = _with_copies(library, loaded.record, record, Path(scratch), report)
        left_out += lost
        kept = Whole(record.format, record.model_dump_json(), (), loaded.at)
        addresses = {p.id: layout.photograph_name(p) for p in record.photographs}
        pictures = {p.id: paths[p.id].read_bytes() for p in record.photographs}
        files = [
            BagFile(layout.ABOUT, layout.about(record, layout.SHARING, kept)),
            BagFile(layout.RECORD, layout.written(record.model_dump(mode="json"))),
            BagFile(layout.LEFT_OUT, ("\n".join(tr(line) for line in left_out) + "\n").encode()),
            *profile_files(loaded.profile_folder),
            *({addresses[key]: BagFile(addresses[key], path) for key, path in paths.items()}.values()),
            *summary_files(profile, record, pictures, addresses, loaded.at),
        ]
        told = info(record, profile, layout.SHARING, loaded)
        written = write_bag(target, layout.base_of(record.id), files, told, report)
    return Packed(target, written.files, written.size, written.sha256, left_out)


def to_share(record: Record, sharing: Sharing) -> tuple[Record, tuple[Say, ...]]:
    """The record as others may have it, photographs still to be replaced by copies, and what was left out of it."""
    shared = without_money(record)
    claim = shared.claim.model_copy(update={"place": ""})
    chosen = tuple(p for p in shared.photographs if sharing.photographs is None or p.id in sharing.photographs)
    places = _places(record)
    shared = shared.model_copy(
        update={
            "claim": claim,
            "photographs": chosen,
            "statements": tuple(s for s in shared.statements if not s.text.startswith(PLACE_SAID)),
            "signatures": (),
            "versions": (),
            "earlier": None,
            "choices": shared.choices.model_copy(update={"clocks": (), "place_told": False}),
        }
    )
    shared = _without_places(shared, places)
    if not sharing.names:
        shared = _without_names(shared)
    return shared, tuple(_left_out(record, shared, sharing))


def _left_out(record: Record, shared: Record, sharing: Sharing) -> Iterator[Say]:
    yield say("This copy is made to be shared. Not in it:")
    yield say("- the asking price, comparables, remedies and everything else about money;")
    yield say("- the place of the inspection, also where notes name it as it was entered, and places that cameras"
              " wrote into photographs;")  # fmt: skip
    yield say("- the photographs as they came, their file names, and the names of cameras: these are copies;")
    yield say("- the history of changes, signatures and sealed versions;")
    if record.earlier is not None:
        yield say("- what was seen on the visit before;")
    if gone := len(record.photographs) - len(shared.photographs):
        yield say("- {count} photographs that were not chosen;", count=gone)
    if any(p.masks for p in shared.photographs):
        yield say("- what was covered in {count} photographs;", count=sum(bool(p.masks) for p in shared.photographs))
    if shared.readings and any(m.hides is Covered.NUMBER for p in shared.photographs for m in p.masks):
        yield say("Numbers that are covered in photographs stand in the record all the same, as they were read.")
    if not sharing.names:
        yield say("- the names of people.")
    yield say("Notes and captions written by hand are in it as they were written. Read them before handing it on.")


def _places(record: Record) -> tuple[str, ...]:
    """Where the machine was seen, as entered here or in a record that was joined."""
    said = (s.text.removeprefix(PLACE_SAID) for s in record.statements if s.text.startswith(PLACE_SAID))
    before = record.earlier.claim.place if record.earlier else ""
    return tuple(place for place in (record.claim.place.strip(), before.strip(), *said) if place)


def _without_places(record: Record, places: tuple[str, ...]) -> Record:
    """The record in which what was written by hand no longer names them, whole or by the parts of an address."""
    if not places:
        return record
    named = (part.strip() for place in places for part in place.split(","))
    parts = {part for part in named if len(part) >= SHORTEST_PLACE and part != part.lower()}
    words = sorted({*places, *parts}, key=len, reverse=True)
    pattern = re.compile("|".join(rf"(?<!\w){re.escape(word)}(?!\w)" for word in words), re.IGNORECASE)
    body = record.model_dump(mode="json")
    return Record.model_validate(_put(body, lambda text: pattern.sub(LEFT, text)))


def _without_names(record: Record) -> Record:
    """The record in which people are called by their role, also where somebody's notes name them in full."""
    roles = {person.name: person.role.value for person in record.people if person.name.strip()}
    roles |= {name: tr("somebody") for s in record.statements if (name := s.by.strip()) and name not in roles}
    roles |= {name: tr("somebody") for p in record.papers if (name := p.named.strip()) and name not in roles}
    bare = {ASIDE.sub("", name): role for name, role in roles.items()}
    words = [name for name in sorted({**roles, **bare}, key=len, reverse=True) if len(name) > 1]
    body = record.model_dump(mode="json")
    for person in body["people"]:
        person.update(name="", interest="")
    for statement in body["statements"]:
        statement["by"] = roles.get(statement["by"].strip(), "")
    for reading in body["readings"]:
        reading["leave_of"] = ""
    for photograph in body["photographs"]:
        photograph["by"] = photograph["by"] if record.person(photograph["by"]) else ""
    pattern = re.compile("|".join(rf"(?<!\w){re.escape(name)}(?!\w)" for name in words), re.IGNORECASE)
    known = {name.casefold(): role for name, role in {**roles, **bare}.items()}

    def told(text: str) -> str:
        new = pattern.sub(lambda found: known[found[0].casefold()], text)
        return new if len(new) <= max(len(text), MOST_LINE) else pattern.sub(LEFT, text)

    return Record.model_validate(_put(body, told) if words else body)


def _put(value: Any, change: Any, key: str = "") -> Any:
    if isinstance(value, dict):
        return {name: _put(inner, change, name) for name, inner in value.items()}
    if isinstance(value, list):
        return [_put(inner, change, key) for inner in value]
    return change(value) if isinstance(value, str) and key in BY_HAND else value


def _with_copies(
    library: Library, original: Record, shared: Record, folder: Path, report: Report
) -> tuple[Record, dict[str, Path], tuple[Say, ...]]:
    """The record that names sharing copies, where these are by photograph id, and which could not be made."""
    numbers = {p.id: n for n, p in enumerate(original.photographs, 1)}
    paths: dict[str, Path] = {}
    kept: list[Photograph] = []
    lost: list[Say] = []
    for n, photograph in enumerate(shared.photographs):
        name = f"photograph {numbers[photograph.id]}.jpg"
        report(n, len(shared.photographs), name)
        copy = _copy(library, photograph)
        if not isinstance(copy, bytes):
            lost.append(say("- {name}: {why}", name=name, why=copy))
            continue
        new = _named(photograph, copy, name)
        if new is not None:
            paths[new.id] = folder / new.sha256
            land(write_unfinished(folder, [copy]), paths[new.id])
            kept.append(new)
    return shared.model_copy(update={"photographs": tuple(kept)}), paths, tuple(lost)


def _copy(library: Library, photograph: Photograph) -> bytes | Say:
    source = library.photographs.path(photograph.sha256)
    if isinstance(source, Missing):
        return source.said
    made = sharing_copy(source, [Cover(m.left, m.top, m.right, m.bottom) for m in photograph.masks])
    return made.why if isinstance(made, Refusal) else made


def _named(photograph: Photograph, copy: bytes, name: str) -> Photograph | None:
    picture = probe(copy, name)
    if isinstance(picture, Refusal):
        return None
    told = {
        "sha256": hashlib.sha256(copy).hexdigest(), "name": name, "media": "image/jpeg", "width": picture.width,
        "height": picture.height, "size": len(copy), "has_place": False, "camera": "", "masks": (),
    }  # fmt: skip
    return photograph.model_copy(update=told)
