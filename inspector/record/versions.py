"""Versions: what is frozen when a sheet is sealed, what of it is handed over, and whether it still stands so."""

from __future__ import annotations

import hashlib
import json

from inspector.record.edits import Part, Step
from inspector.record.model import Record
from inspector.record.money import Money, Version
from inspector.record.verbs import put_entry

LABEL = "Seal version {number}"


def canonical(record: Record) -> bytes:
    """The record as JSON in one form only: keys in order, no spaces, UTF-8, nothing in it that is as by default.

    So a later version of the program that knows more fields finds what was sealed before unchanged.
    """
    plain = {"format": record.format, **record.model_dump(mode="json", exclude_defaults=True)}
    return json.dumps(plain, ensure_ascii=False, sort_keys=True, separators=(",", ":")).encode()


def sha256_of(data: bytes) -> str:
    """The SHA-256 of the bytes, in hex."""
    return hashlib.sha256(data).hexdigest()


def without_money(record: Record) -> Record:
    """The record with everything private to the user's purse taken away."""
    claim, earlier = record.claim.model_copy(update={"asking_price": ""}), record.earlier
    if earlier is not None:
        earlier = earlier.model_copy(update={"claim": earlier.claim.model_copy(update={"asking_price": ""})})
    private = {"comparables": (), "adjustments": (), "remedies": (), "money": Money()}
    return record.model_copy(update={"claim": claim, "earlier": earlier, **private})


def for_the_seller(record: Record) -> Record:
    """The record as the seller's copy tells it: no money, and where it was looked at only if that was chosen."""
    record = without_money(record)
    return record if record.choices.place_told else without_place(record)


def without_place(record: Record) -> Record:
    """The record without the places where the machine was looked at, on this visit and the one before.

    What versions differed in goes too, since a place may be told there.
    """
    claim, earlier = record.claim.model_copy(update={"place": ""}), record.earlier
    if earlier is not None:
        earlier = earlier.model_copy(update={"claim": earlier.claim.model_copy(update={"place": ""})})
    versions = tuple(v.model_copy(update={"differences": ()}) for v in record.versions)
    return record.model_copy(update={"claim": claim, "earlier": earlier, "versions": versions})


def handed_over(record: Record) -> Record:
    """The record as it is attached to a sheet: what the seller's copy tells, and no names of files and cameras.

    What the whole record hashes to is left out too: whoever has the rest could try amounts until it fits.
    """
    record = for_the_seller(record)
    photographs = tuple(p.model_copy(update={"name": "", "camera": ""}) for p in record.photographs)
    versions = tuple(v.model_copy(update={"whole": ""}) for v in record.versions)
    choices = record.choices.model_copy(update={"clocks": ()})
    earlier = record.earlier
    if earlier is not None:
        then = tuple(p.model_copy(update={"name": "", "camera": ""}) for p in earlier.photographs)
        earlier = earlier.model_copy(update={"photographs": then})
    told = {"photographs": photographs, "versions": versions, "choices": choices, "earlier": earlier}
    return record.model_copy(update=told)


def attached(record: Record) -> bytes:
    """What is attached to a sheet of this record: the record handed over, in its one form."""
    return canonical(handed_over(record))


def next_version(record: Record) -> int:
    """The number of the version that is not sealed yet, from 1."""
    return max((version.number for version in record.versions), default=0) + 1


def last_version(record: Record) -> Version | None:
    """The version sealed last, or None."""
    return max(record.versions, key=lambda version: version.number, default=None)


def as_frozen(record: Record, number: int) -> Record:
    """The record with only the versions before this one, as it stood when this one was sealed."""
    earlier = tuple(version for version in record.versions if version.number < number)
    return record.model_copy(update={"versions": earlier})


def stands_as_sealed(record: Record) -> Version | None:
    """The last version, where nothing that is handed over was changed since it was sealed; else None."""
    last = last_version(record)
    if last is None or sha256_of(attached(as_frozen(record, last.number))) != last.sha256:
        return None
    return last


def version_of(record: Record, at: str, sheet: bytes, key: str, differences: tuple[str, ...] = ()) -> Version:
    """The next version of the record, as frozen with this sealed sheet by the key of this fingerprint."""
    return Version(
        number=next_version(record),
        at=at,
        sha256=sha256_of(attached(record)),
        differences=differences,
        sheet=sha256_of(sheet),
        whole=sha256_of(canonical(record)),
        key=key,
    )


def keep_version(version: Version) -> Step:
    """The record with this version among its own; it is not taken back."""
    return put_entry(Part.VERSIONS, version, label=LABEL.format(number=version.number))


def seals(step: Step) -> bool:
    """Whether the step keeps a version, which no undo takes back."""
    return any(put.part is Part.VERSIONS for put in step.puts)
