"""What is frozen and handed over, what of it was changed since, and who has signed it."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.record.differing import differences
from inspector.record.earlier import Earlier
from inspector.record.edits import Part, apply
from inspector.record.finding import Finding
from inspector.record.model import Record
from inspector.record.money import Money
from inspector.record.reading import figures_of
from inspector.record.refusing import EditRefused
from inspector.record.signing import (
    blocked,
    outdated,
    refuse,
    set_reply,
    sign,
    sign_by_name,
    standing,
    statement_of,
    who_signs,
    withdraw,
)
from inspector.record.verbs import choose_place_told, drop_entry, mark, put_entry, set_claim
from inspector.record.versions import (
    as_frozen,
    attached,
    canonical,
    handed_over,
    keep_version,
    next_version,
    sha256_of,
    stands_as_sealed,
    version_of,
)
from inspector.record.words import Mark, Role
from tests.record.steps import AT, blank, steps
from tests.sheet import made

DRAWN = (((1.0, 2.0), (3.5, 4.0)), ((5.0, 5.0),))
NOT_TOLD = (Part.SIGNATURES, Part.VERSIONS, Part.CHOICES, Part.MONEY, Part.COMPARABLES, Part.ADJUSTMENTS, Part.REMEDIES)


def told(old, new):
    return [str(line) for line in differences(made.profile(), old, new)]


def after(record, *steps):
    for step in steps:
        record = apply(record, step).record
    return record


def frozen(record, sheet=b"the sealed sheet"):
    """The record with its next version kept."""
    return after(record, keep_version(version_of(record, AT, sheet, "f" * 64)))


def signed(record, person="inspector"):
    return after(record, sign(record, person, DRAWN, "said", AT))


# freezing


def test_a_version_holds_the_hash_of_what_is_attached_and_of_the_sealed_sheet():
    record = made.record()
    (version,) = frozen(record).versions
    assert (version.number, version.sheet) == (1, sha256_of(b"the sealed sheet"))
    assert version.sha256 == sha256_of(attached(record))
    assert version.whole == sha256_of(canonical(record))


def test_the_hash_of_a_signed_version_stays_whatever_comes_later():
    record = frozen(signed(made.record()))
    (version,) = record.versions
    later = frozen(after(record, set_claim("model_year", 1954)))
    assert later.versions[0] == version
    assert sha256_of(attached(as_frozen(record, 1))) == version.sha256
    assert (next_version(record), next_version(later)) == (2, 3)


def test_a_record_stands_as_sealed_until_something_that_is_handed_over_changes():
    record = frozen(signed(made.record()))
    assert stands_as_sealed(made.record()) is None
    assert stands_as_sealed(record) == record.versions[0]
    richer = record.model_copy(update={"money": Money(currency="GBP", walk_away="1200")})
    assert stands_as_sealed(richer) == record.versions[0]
    changed = after(record, mark(record, "headlamp", "inspector", AT, Mark.DOUBT))
    assert stands_as_sealed(changed) is None
    back = mark(changed, "headlamp", "inspector", AT, Mark.PASS)  # the same mark, at another time
    assert stands_as_sealed(after(changed, back)) is None


def test_what_is_handed_over_holds_no_money_and_no_hash_of_it():
    record = frozen(made.record().model_copy(update={"money": Money(walk_away="1200", purpose="to ride")}))
    over = handed_over(record)
    assert over.money == Money()
    assert [v.whole for v in over.versions] == [""]
    assert {p.name for p in over.photographs} == {""}
    assert b"1200" not in attached(record).replace(b'"width":1200', b"")


def test_a_place_that_is_told_no_more_is_in_no_version_that_follows():
    told_once = after(made.record(), set_claim("place", "Yard behind the mill"), choose_place_told(True))
    first = frozen(told_once)
    moved = after(first, set_claim("place", "Barn by the weir"))
    lines = tuple(told(told_once, moved))
    assert any("Barn by the weir" in line for line in lines)  # both places are on sheets that tell them
    second = after(moved, keep_version(version_of(moved, AT, b"second", "f" * 64, lines)))
    hidden = after(second, choose_place_told(False))
    assert b"Yard" not in attached(hidden)
    assert b"Barn" not in attached(hidden)
    assert told(moved, hidden) == ["Where it was looked at is not told on this sheet any more."]


def test_a_price_of_the_visit_before_is_not_handed_over():
    claim = made.record().claim.model_copy(update={"asking_price": "4711"})
    record = made.record(earlier=Earlier(record="old", created=AT, claim=claim))
    assert b"4711" not in attached(record)


@settings(max_examples=60, deadline=None)
@given(st.lists(steps(), max_size=5))
def test_the_one_form_of_a_record_is_read_back_the_same(edits):
    record = blank()
    for step in edits:
        record = apply(record, step).record
    again = type(record).model_validate_json(canonical(record))
    assert again == record
    assert canonical(again) == canonical(record)


def test_a_field_that_a_later_version_of_the_program_adds_changes_nothing_that_was_sealed():
    class Later(Record):
        colour: str = ""

    record = frozen(signed(made.record()))
    later = Later.model_validate_json(canonical(record))
    assert canonical(later) == canonical(record)
    assert stands_as_sealed(later) == record.versions[0]
    assert canonical(later.model_copy(update={"colour": "black"})) != canonical(record)


# signing


def test_nobody_signs_before_the_inspectors_interests_are_declared():
    people = tuple(p.model_copy(update={"interest": " "}) for p in made.record().people)
    record = made.record(people=people)
    assert "interests of A. Teasel are not declared" in str(blocked(record))
    with pytest.raises(EditRefused, match="not declared"):
        sign(record, "seller", DRAWN, "", AT)
    assert blocked(made.record()) is None


def test_nobody_signs_where_no_inspector_is_entered():
    assert "Nobody is entered as inspector" in str(blocked(made.record(people=())))


def test_inspectors_sign_first():
    people = tuple(reversed(made.record().people))
    assert [p.id for p in who_signs(made.record(people=people))] == ["inspector", "seller"]


def test_a_signature_holds_its_strokes_and_what_was_said_by_it():
    record = signed(made.record())
    (one,) = standing(record).values()
    assert (one.person, one.strokes, one.statement, one.version, one.refused) == ("inspector", DRAWN, "said", 1, False)


@pytest.mark.parametrize("strokes", [(), ((),)])
def test_an_empty_pad_is_no_signature(strokes):
    with pytest.raises(EditRefused, match="Nothing is drawn yet"):
        sign(made.record(), "seller", strokes, "", AT)


def test_a_drawing_without_end_is_no_signature():
    with pytest.raises(EditRefused, match="too long"):
        sign(made.record(), "seller", (((0.0, 0.0),) * 20_001,), "", AT)


def test_a_typed_name_is_kept_as_typed_and_draws_nothing():
    record = after(made.record(), sign_by_name(made.record(), "seller", "  R.\tQuill\x1b ", "said", AT))
    (one,) = standing(record).values()
    assert (one.typed, one.strokes, one.refused) == ("R. Quill", (), False)
    drawn = signed(record, "seller")
    assert [(s.typed, s.strokes) for s in standing(drawn).values()] == [("", DRAWN)]


@pytest.mark.parametrize(("name", "said"), [("", "No name"), (" .-\n", "No name"), ("\u200b", "No name"),
                                            ("x" * 121, "longer than 120")])  # fmt: skip
def test_what_is_no_name_is_no_signature(name, said):
    with pytest.raises(EditRefused, match=said):
        sign_by_name(made.record(), "seller", name, "", AT)


def test_nobody_signs_by_name_before_the_interests_are_declared():
    with pytest.raises(EditRefused, match="Nobody is entered"):
        sign_by_name(made.record(people=()), "seller", "R. Quill", "", AT)


def test_one_signature_leaves_the_other_standing():
    record = signed(signed(made.record()), "seller")
    assert set(standing(record)) == {"inspector", "seller"}
    assert outdated(record) == ()


def test_a_signature_does_not_hold_for_what_was_changed_after_it():
    record = signed(made.record())
    record = after(record, mark(record, "headlamp", "inspector", AT, Mark.FAIL))
    assert standing(record) == {}
    assert outdated(record) == ("inspector",)
    assert set(standing(signed(record))) == {"inspector"}


def test_a_signature_of_a_sealed_version_is_none_of_the_next():
    record = frozen(signed(made.record()))
    assert standing(record) == {}
    assert outdated(record) == ()
    assert len(signed(record).signatures) == 2


def test_a_refusal_is_kept_as_such_and_can_be_taken_back():
    record = after(made.record(), refuse(made.record(), "seller", "asked", AT))
    assert standing(record)["seller"].refused
    assert after(record, withdraw(record, "seller")).signatures == ()
    assert withdraw(made.record(), "seller") is None


def test_a_reply_stands_with_the_finding_and_changes_nothing_else_of_it():
    record = made.record()
    old = record.finding("front-wheel", "inspector")
    new = after(record, set_reply(record, old, "It was so when I bought it.")).finding("front-wheel", "inspector")
    assert new == old.model_copy(update={"reply": "It was so when I bought it."})


@pytest.mark.parametrize("role", Role)
def test_what_is_said_by_signing_claims_no_force_and_no_agreement(role):
    said = str(statement_of(role)).casefold()
    assert not any(word in said for word in ("certif", "guarantee", "legal", "warrant", "confirm"))


# differences


def test_a_record_does_not_differ_from_itself():
    assert told(made.record(), made.record()) == []


def test_differences_are_told_by_item_number_paper_and_claim():
    old = made.record()
    reading = old.readings[0].model_copy(update={"figures": figures_of("6H 15842")})
    paper = old.papers[0].model_copy(update={"named": "R. Quill"})
    new = after(
        old,
        set_claim("model_year", 1954),
        mark(old, "headlamp", "inspector", AT, Mark.FAIL),
        drop_entry(Part.FINDINGS, "barrel/inspector", label="out"),
        put_entry(Part.FINDINGS, Finding(item="rear-hub", by="ben", mark=Mark.DOUBT), label="in"),
        put_entry(Part.READINGS, reading, label="number"),
        put_entry(Part.PAPERS, paper, label="paper"),
        drop_entry(Part.PHOTOGRAPHS, "p1", label="out"),
    )
    assert told(old, new) == [
        "Claim, model year: now “1954”, before “1953”.",
        "Headlamp (A. Teasel): now fail, before pass.",
        "Cylinder barrel (A. Teasel): the finding was taken out.",
        "Rear hub, inside (ben): doubt; nothing was noted before.",
        "Number at Frame: now read as 6H 15842, before 6H 15[83]42.",
        "Paper “Registration book”: changed in who is named.",
        "Photographs, Front wheel: 1 taken out.",
    ]


def test_what_changed_beside_the_mark_is_named():
    old = made.record()
    finding = old.finding("front-wheel", "inspector")
    new = finding.model_copy(update={"unsafe": False, "note": "Rim sound.", "evidence": ()})
    (line,) = told(old, after(old, put_entry(Part.FINDINGS, new, label="")))
    assert line == "Front wheel (A. Teasel): changed in how it shows, unsafe or not, note."


def test_money_is_no_difference():
    old = made.record()
    new = after(old, set_claim("asking_price", "4711")).model_copy(update={"money": Money(walk_away="1200")})
    assert told(old, new) == []


def plain(record):
    """What is handed over but for times and the order of entries."""
    body = json.loads(attached(record))
    for part in body.values():
        for entry in part if isinstance(part, list) else ():
            if isinstance(entry, dict):
                entry.pop("at", None)
    return {k: sorted(map(json.dumps, v)) if isinstance(v, list) else v for k, v in body.items()}


@settings(max_examples=80, deadline=None)
@given(st.lists(steps(tuple(p for p in Part if p not in NOT_TOLD)), max_size=4),
       st.lists(steps(tuple(p for p in Part if p not in NOT_TOLD)), max_size=4))  # fmt: skip
def test_no_difference_goes_untold(first, second):
    old = after(blank(), *first)
    new = after(old, *second)
    assert bool(told(old, new)) == (plain(old) != plain(new))
