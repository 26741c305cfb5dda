"""What is open on the page Numbers, and the readings and papers that its touches change."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from inspector.profile.model import Profile
from inspector.record.claim import Paper
from inspector.record.edits import Part
from inspector.record.model import Record
from inspector.record.reading import Figure, Reading, numbered
from inspector.record.verbs import put_entry
from inspector.record.words import Clarity, HowRead, NumberState
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.figures import CLEAR, PROBABLE, UNREADABLE, Cell
from inspector.window.numbers.entry import GAP

KINDS = {Clarity.CLEAR: CLEAR, Clarity.PROBABLE: PROBABLE, Clarity.UNREADABLE: UNREADABLE}


@dataclass(frozen=True, slots=True)
class Shown:
    """A numbered place with one of its readings (none while nothing was entered there), or a paper."""

    place: str = ""
    reading: str = ""
    paper: str = ""


def all_shown(profile: Profile, record: Record) -> tuple[Shown, ...]:
    """Every reading of every place in the profile's order, places without one too, then every paper."""
    found = []
    for place in places_of(profile, record):
        readings = readings_at(record, place)
        found += [Shown(place=place, reading=r.id) for r in readings] or [Shown(place=place)]
    return (*found, *(Shown(paper=paper.id) for paper in record.papers))


def places_of(profile: Profile, record: Record) -> tuple[str, ...]:
    """The places of the profile, then those that only the record knows."""
    known = [place.id for place in profile.places]
    return tuple(dict.fromkeys([*known, *(reading.place for reading in record.readings)]))


def readings_at(record: Record, place: str) -> tuple[Reading, ...]:
    """The readings of a place in the order entered."""
    return tuple(reading for reading in record.readings if reading.place == place)


def reading_of(record: Record, shown: Shown) -> Reading | None:
    """The reading that is open; None where none was begun."""
    return next((r for r in record.readings if r.id == shown.reading), None) if shown.reading else None


def paper_of(record: Record, shown: Shown) -> Paper | None:
    """The paper that is open; None where a place is."""
    return next((p for p in record.papers if p.id == shown.paper), None) if shown.paper else None


def free_id(taken: Iterable[str], stem: str) -> str:
    """The stem, or the stem with the first number that nobody has."""
    used = set(taken)
    return next(key for n in range(1, len(used) + 2) if (key := stem if n == 1 else f"{stem}-{n}") not in used)


def begun(desk: Desk, place: str) -> Reading:
    """A reading of this place by the person at the machine, not yet in the record."""
    key = free_id((r.id for r in desk.record.readings), place)
    return Reading(id=key, place=place, by=desk.here.by, at=desk.clock(), how_read=HowRead.NOT_SAID)


def change_reading(desk: Desk, shown: Shown, label: str, *, joins: str = "", **changes: Any) -> str:
    """The open reading has these fields, begun where there was none; gives its id, or nothing where it was refused."""
    old = reading_of(desk.record, shown) or begun(desk, shown.place)
    new = Reading.model_validate({**old.model_dump(), **changes})
    done = desk.do(put_entry(Part.READINGS, new, label=label, joins=joins))
    return new.id if done else ""


def change_paper(desk: Desk, paper: Paper, label: str, *, joins: str = "", **changes: Any) -> bool:
    """The paper with these fields changed; False where it was refused."""
    new = Paper.model_validate({**paper.model_dump(), **changes})
    return desk.do(put_entry(Part.PAPERS, new, label=label, joins=joins))


# in words


def cells_of(figures: Sequence[Figure]) -> tuple[Cell, ...]:
    """The figures as cells, a gap told by the one behind it."""
    cells: list[Cell] = []
    gap = False
    for figure in figures:
        if figure == GAP:
            gap = bool(cells)
            continue
        could = figure.could_be
        cells.append(Cell(could[0] if could else "", KINDS[figure.clarity], could[1:], gap))
        gap = False
    return tuple(cells)


def figure_words(figure: Figure) -> str:
    """One figure in words: itself, "8 or 3", or that it is unreadable."""
    if figure.clarity is Clarity.UNREADABLE:
        return tr("unreadable")
    return tr(" or ").join(figure.could_be)


def said(figures: Sequence[Figure]) -> str:
    """The number as it is read out."""
    parts = [figure_words(figure) for figure in figures if figure != GAP]
    return " ".join(parts)


def state_words(reading: Reading | None) -> str:
    """How well a reading was seen, in a few words."""
    if reading is None:
        return tr("not read yet")
    if not reading.figures:
        return tr("nothing written yet") if reading.state is NumberState.READ else tr(reading.state.value)
    doubts = [(n, f) for n, f in numbered(reading.figures) if f.clarity is not Clarity.CLEAR]
    words = tr("every figure clear") if not doubts else "; ".join(_doubt(n, f) for n, f in doubts[:2])
    if len(doubts) > 2:
        words = tr("{n} figures doubtful", n=len(doubts))
    if reading.how_read is not HowRead.METAL:
        words = tr("{words}; {how}", words=words, how=tr(reading.how_read.value))
    return words


def _doubt(n: int, figure: Figure) -> str:
    if figure.clarity is Clarity.UNREADABLE:
        return tr("figure {n} unreadable", n=n)
    if len(figure.could_be) == 1:
        return tr("figure {n} probable", n=n)
    return tr("{what} at figure {n}", what=figure_words(figure), n=n)


def which_words(desk: Desk, reading: Reading, among: Sequence[Reading]) -> str:
    """Which of several readings of a place this is: when it was taken, by whom, cleaned or as found."""
    order = [r.id for r in among].index(reading.id) + 1
    words = [tr("reading {n} of {all}", n=order, all=len(among)), tr("wiped") if reading.cleaned else tr("as found")]
    if reading.by and reading.by != "inspector":
        words.append(desk.record.name_of(reading.by))
    if reading.at:
        words.append(reading.at[11:16])
    return ", ".join(words)
