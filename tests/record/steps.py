"""Random steps over every part of a record, for properties."""

from decimal import Decimal

from hypothesis import strategies as st

from inspector.record.begin import new_record
from inspector.record.claim import Inquiry, Paper, Person, Quoted, Statement
from inspector.record.edits import LISTED, SINGLE, Part, Put, Step
from inspector.record.finding import Concluded, Finding, Measured, Photograph, Question
from inspector.record.model import ProfileRef
from inspector.record.money import Adjustment, Comparable, Figures, Remedy, Signature, Version
from inspector.record.reading import Figure, Reading, figures_of
from inspector.record.words import (
    Adjusts,
    Clarity,
    Conclusion,
    Condition,
    Evidence,
    HowRead,
    Mark,
    PaperState,
    PatternPolicy,
    PriceKind,
    Role,
    Seen,
    StampSight,
    Sureness,
)

KEYS = ("a", "b", "c")
AT = "2026-03-01T10:00:00+00:00"

keys = st.sampled_from(KEYS)
texts = st.text(max_size=12)
moments = st.sampled_from(("", AT))
money = st.decimals(0, 10**6, places=2)
figures = st.one_of(
    st.builds(Figure, clarity=st.just(Clarity.CLEAR), could_be=st.tuples(st.characters(codec="utf-8"))),
    st.builds(Figure, clarity=st.just(Clarity.UNREADABLE)),
    st.sampled_from(figures_of("[19]0[58]?")),
)
strokes = st.lists(st.lists(st.tuples(st.floats(0, 1000), st.floats(0, 1000)), max_size=3).map(tuple), max_size=2).map(
    tuple
)


def several(of):
    return st.lists(of, max_size=3).map(tuple)


ENTRIES = {
    Part.PEOPLE: st.builds(Person, id=keys, name=texts, role=st.sampled_from(Role), interest=texts),
    Part.PAPERS: st.builds(
        Paper,
        id=keys,
        name=texts,
        state=st.sampled_from(PaperState),
        note=texts,
        dated=texts,
        quoted=several(st.builds(Quoted, number=texts)),
    ),
    Part.INQUIRIES: st.builds(Inquiry, id=keys, about=texts, body=texts, reply=texts),
    Part.STATEMENTS: st.builds(Statement, id=keys, text=texts, by=texts, at=moments),
    Part.READINGS: st.builds(
        Reading,
        id=keys,
        place=keys,
        figures=several(figures),
        how_read=st.sampled_from(HowRead),
        cleaned=st.booleans(),
        stamping=st.dictionaries(texts, st.sampled_from(StampSight), max_size=2),
        note=texts,
    ),
    Part.FINDINGS: st.builds(
        Finding,
        item=keys,
        by=keys,
        at=moments,
        mark=st.none() | st.sampled_from(Mark),
        seen=st.sampled_from(Seen),
        conclusions=several(st.builds(Concluded, what=st.sampled_from(Conclusion), sureness=st.sampled_from(Sureness))),
        evidence=several(st.sampled_from(Evidence)),
        measured=several(st.builds(Measured, measure=keys, readings=several(texts), unit=texts)),
        conditions=several(st.sampled_from(Condition)),
        unsafe=st.booleans(),
        note=texts,
        reply=texts,
    ),
    Part.PHOTOGRAPHS: st.builds(
        Photograph,
        id=keys,
        sha256=st.text("0123456789abcdef", min_size=64, max_size=64),
        name=texts,
        media=texts,
        width=st.integers(1, 9000),
        height=st.integers(1, 9000),
        size=st.integers(1, 10**8),
        item=st.just("") | keys,
        caption=texts,
    ),
    Part.QUESTIONS: st.builds(Question, id=keys, text=texts, item=keys, closed=texts),
    Part.COMPARABLES: st.builds(
        Comparable,
        id=keys,
        kind=st.sampled_from(PriceKind),
        price=money,
        currency=st.just("EUR"),
        fees_in=st.booleans(),
    ),
    Part.ADJUSTMENTS: st.builds(
        Adjustment, id=keys, comparable=keys, what=st.sampled_from(Adjusts), amount=money | st.just(Decimal("0.190"))
    ),
    Part.REMEDIES: st.builds(
        Remedy, item=keys, cost=keys, chosen=st.booleans(), figures=st.none() | st.builds(Figures, name=texts)
    ),
    Part.SIGNATURES: st.builds(Signature, id=keys, person=keys, strokes=strokes, refused=st.booleans()),
    Part.VERSIONS: st.builds(Version, number=st.integers(1, 3), at=moments, differences=several(texts)),
}
years = st.none() | st.integers(1880, 2100)
FIELDS = {
    Part.CLAIM: {
        "model": texts, "advertised": texts, "titled": texts, "model_year": years, "title_year": years,
        "build_date": texts, "place": texts, "asking_price": texts,
    },
    Part.CHOICES: {
        "pattern_parts": st.sampled_from(PatternPolicy).map(str), "points": st.booleans(),
        "order": st.lists(keys, max_size=3),
    },
    Part.MONEY: {
        "currency": st.sampled_from(["", "EUR"]), "labour_rate": st.none() | money.map(str), "purpose": texts,
        "fees": st.lists(st.fixed_dictionaries({"name": texts, "amount": money.map(str)}), max_size=2),
    },
}  # fmt: skip


def _added(part):
    def put(entry, index):
        key = str(getattr(entry, LISTED[part][1]))
        return Put(part=part, key=key, value=entry.model_dump(mode="json"), index=index)

    return st.builds(put, ENTRIES[part], st.none() | st.integers(0, 4))


def _taken(part):
    key = {Part.FINDINGS: st.sampled_from([f"{i}/{p}" for i in KEYS for p in KEYS]),
           Part.VERSIONS: st.sampled_from(["1", "2", "3"])}.get(part, keys)  # fmt: skip
    return st.builds(Put, part=st.just(part), key=key, value=st.none())


def _fields(part):
    return st.one_of([st.builds(Put, part=st.just(part), key=st.just(k), value=v) for k, v in FIELDS[part].items()])


def puts(parts=tuple(Part)):
    """One put, of any of these parts."""
    return st.sampled_from(parts).flatmap(
        lambda part: _fields(part) if part in SINGLE else st.one_of(_added(part), _added(part), _taken(part))
    )


def steps(parts=tuple(Part), joins=("", "one", "two")):
    """One step of one to three puts."""
    return st.builds(
        Step,
        label=st.sampled_from(("Mark", "Note")),
        puts=st.lists(puts(parts), min_size=1, max_size=3).map(tuple),
        joins=st.sampled_from(joins),
    )


def blank(record_id="K3V7Q2M9"):
    """A new record of an invented model."""
    profile = ProfileRef(id="tern-250", version="1", title="Tern 250 (invented)")
    return new_record(record_id, AT, profile, inspector="Ada Fenn (invented)")
