"""The demo machine: one invented inspection, built from a data file, the same every time."""

from __future__ import annotations

import tomllib
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any, NamedTuple

from inspector.photo.intake import Taken, take
from inspector.profile.read import read_profile
from inspector.record.begin import new_record
from inspector.record.claim import Inquiry, Paper, Person, Statement
from inspector.record.edits import LISTED, Part, Step, apply
from inspector.record.finding import Finding, Photograph, Question
from inspector.record.format import FORMAT
from inspector.record.model import ProfileRef, Record
from inspector.record.money import Adjustment, Comparable, Remedy
from inspector.record.photographs import photograph_of
from inspector.record.reading import Reading, figures_of
from inspector.record.verbs import put_entry, set_claim
from inspector.record.verbs_money import set_money
from inspector.resource import sample_profiles
from inspector.storage.formats import text_of
from inspector.storage.lines import Row
from inspector.storage.whole import Whole

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from inspector.photo.intake import Keeper
    from inspector.record.base import Piece
    from inspector.storage.library import Library

PROFILE = "brackwater-heron"
DEMO_ID = "DEM01953"
KINDS: dict[Part, type[Piece]] = {
    Part.PEOPLE: Person,
    Part.PAPERS: Paper,
    Part.INQUIRIES: Inquiry,
    Part.STATEMENTS: Statement,
    Part.READINGS: Reading,
    Part.FINDINGS: Finding,
    Part.QUESTIONS: Question,
}
PRIVATE: dict[Part, type[Piece]] = {
    Part.REMEDIES: Remedy,
    Part.COMPARABLES: Comparable,
    Part.ADJUSTMENTS: Adjustment,
}
EVERY = timedelta(seconds=25)


class Timed(NamedTuple):
    """A step and when it was done."""

    step: Step
    at: str


def demo_folder() -> Path:
    """The profile on which the demo stands."""
    return sample_profiles() / PROFILE


def put_demo(library: Library, *, money: bool = True) -> str:
    """The demo machine is in the list, made anew only if it is not in the library; gives its id.

    Made anew without ``money``, it has nothing of what its buyer noted about prices.
    """
    if any(machine.summary.id == DEMO_ID for machine in library.machines()):
        return DEMO_ID
    if any(taken.summary.id == DEMO_ID for taken in library.taken_out()):
        library.restore(DEMO_ID)
        return DEMO_ID
    begun, steps = demo_steps(library.photographs, money=money)
    record, rows = begun, list[Row]()
    for timed in steps:
        record, inverse = apply(record, timed.step)
        step, back = text_of(timed.step), text_of(inverse)
        rows.append(Row(len(rows) + 1, "do", False, timed.at, "inspector", FORMAT, step, back))
    # At once, so that a program that dies meanwhile leaves no half of it.
    library.take_in(record, Whole(FORMAT, text_of(begun), tuple(rows), steps[-1].at), demo_folder())
    return DEMO_ID


def demo_steps(photographs: Keeper, *, money: bool = True) -> tuple[Record, tuple[Timed, ...]]:
    """The empty record of the demo, and everything that was entered, in order and with its time."""
    folder = demo_folder()
    read = read_profile(folder)
    if read.profile is None:
        raise ValueError("; ".join(str(problem) for problem in read.problems))
    told = tomllib.loads((folder / "demo" / "demo.toml").read_text("utf-8"))
    begun = datetime.fromisoformat(told["begun"])
    ref = ProfileRef(id=read.profile.id, version=read.profile.version, sha256=read.sha256, title=read.profile.title)
    record = new_record(DEMO_ID, begun.isoformat(), ref).model_copy(update={"invented": True})
    times = (begun + EVERY * n for n in range(100_000))
    steps = [Timed(set_claim(field, value), next(times).isoformat()) for field, value in told["claim"].items()]
    for part in KINDS:
        for entry in told.get(part.value, ()):
            at = next(times).isoformat()
            steps += [Timed(step, at) for step in _steps(part, entry, at, folder / "demo", photographs)]
    if money:
        steps += [Timed(step, next(times).isoformat()) for step in _private(folder / "demo")]
    return record, tuple(steps)


def _private(folder: Path) -> Iterator[Step]:
    """What the buyer noted about money, setting by setting and entry by entry."""
    told = tomllib.loads((folder / "money.toml").read_text("utf-8"))
    yield from (set_money(field, value) for field, value in told["money"].items())
    for part, kind in PRIVATE.items():
        for entry in told[part.value]:
            yield _put(part, kind, entry)


def _steps(part: Part, entry: dict[str, Any], at: str, folder: Path, photographs: Keeper) -> list[Step]:
    pictures = entry.pop("photographs", [])
    if part is Part.READINGS:
        entry = {"id": entry["place"], "by": "inspector", "at": at, **entry, "figures": figures_of(entry.pop("typed"))}
        entry.pop("typed", None)
    if part is Part.FINDINGS:
        entry = {"by": "inspector", "at": at, **entry}
    steps = [_put(part, KINDS[part], entry)]
    tied = {"item": entry.get("item", ""), "place": entry.get("place", "")}
    for picture in pictures:
        photograph = _photograph(picture, tied, at, folder, photographs)
        steps.append(put_entry(Part.PHOTOGRAPHS, photograph, label="Photographs"))
    return steps


def _put(part: Part, kind: type[Piece], entry: dict[str, Any]) -> Step:
    """The entry of the data file put into this part, under the label that such an edit has in the window."""
    piece = kind.model_validate(entry)
    return put_entry(part, piece, label=str(getattr(piece, LISTED[part][1])))


def _photograph(told: dict[str, str], tied: dict[str, str], at: str, folder: Path, keeper: Keeper) -> Photograph:
    taken = take(folder / told["file"], keeper)
    if not isinstance(taken, Taken):
        raise ValueError(f"{told['file']}: {taken.why}")
    told = {"caption": told.get("caption", ""), "light": told.get("light", "")}
    return photograph_of(taken, at, "inspector", **tied, **told)
