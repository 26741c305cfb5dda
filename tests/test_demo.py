"""The demo machine: the same every time, whole, and with every word of the lists in use."""

import json
from hashlib import sha256
from itertools import chain
from pathlib import Path

import pytest
from PIL import Image, ImageOps

from inspector.demo import DEMO_ID, Timed, demo_folder, demo_steps, put_demo
from inspector.judgement.differences import differences
from inspector.judgement.judge import judge
from inspector.judgement.money import money
from inspector.judgement.plain import plain
from inspector.judgement.questions import questions
from inspector.judgement.safety import safety
from inspector.profile.expected import applies
from inspector.profile.model import Profile
from inspector.profile.read import read_profile
from inspector.record.edits import SINGLE, Part, apply
from inspector.record.model import Record
from inspector.record.money import Money
from inspector.record.words import Clarity, Conclusion, Condition, Evidence, Mark, PaperState, PriceKind, Seen
from inspector.sheet.compose import seller_sheet
from inspector.sheet.text import as_text
from inspector.storage.library import Library
from inspector.storage.photographs import State

AT = "2026-05-16T12:00:00+01:00"
RIGHT = {
    Conclusion.RIGHT_YEAR,
    Conclusion.RIGHT_ERA,
    Conclusion.YEAR_NOT_SHOWN,
    Conclusion.OPTION,
    Conclusion.DEALER,
}


def opened(folder: Path) -> Library:
    return Library.open(folder, lambda: AT)


@pytest.fixture(scope="module")
def library(tmp_path_factory):
    with opened(tmp_path_factory.mktemp("demo")) as one:
        put_demo(one)
        yield one


@pytest.fixture(scope="module")
def record(library) -> Record:
    return library.load(DEMO_ID).record


@pytest.fixture(scope="module")
def profile() -> Profile:
    read = read_profile(demo_folder())
    assert read.profile, [str(problem) for problem in read.problems]
    return read.profile


@pytest.fixture(scope="module")
def entered(library) -> tuple[Record, tuple[Timed, ...]]:
    return demo_steps(library.photographs)


def held(library: Library) -> tuple:
    loaded = library.load(DEMO_ID)
    return loaded.record, loaded.undo, loaded.at, library.photographs.listing()


def test_put_again_it_is_there_once(library):
    before = held(library)
    assert put_demo(library) == put_demo(library) == DEMO_ID
    assert [machine.summary.id for machine in library.machines()] == [DEMO_ID]
    assert held(library) == before


def test_two_libraries_hold_the_same_record_and_the_same_history(library, tmp_path):
    with opened(tmp_path) as other:
        assert put_demo(other) == DEMO_ID
        assert held(other) == held(library)


def test_taken_out_of_the_list_it_comes_back_as_it_was(library, tmp_path):
    with opened(tmp_path) as other:
        put_demo(other)
        other.remove(DEMO_ID)
        assert put_demo(other) == DEMO_ID
        assert [machine.summary.id for machine in other.machines()] == [DEMO_ID]
        assert held(other) == held(library)


def test_what_is_kept_is_what_the_steps_make(entered, record):
    begun, steps = entered
    for timed in steps:
        begun, _ = apply(begun, timed.step)
    assert begun == record


def test_it_is_invented_and_says_so(record, profile):
    assert record.invented
    assert profile.invented
    assert "invented" in record.claim.advertised.casefold()
    assert [person.name for person in record.people] == ["A. Teasel", "R. Quill", "M. Fennick"]


@pytest.mark.parametrize("word", Conclusion)
def test_every_conclusion_is_drawn_somewhere(record, word):
    assert [f.item for f in record.findings for c in f.conclusions if c.what is word]


@pytest.mark.parametrize("word", Evidence)
def test_every_evidence_is_given_somewhere(record, word):
    assert [f.item for f in record.findings if word in f.evidence]


@pytest.mark.parametrize("word", Seen)
def test_every_seen_state_occurs(record, word):
    assert [f.item for f in record.findings if f.seen is word]


@pytest.mark.parametrize("word", Condition)
def test_every_condition_occurs(record, word):
    assert [f.item for f in record.findings if word in f.conditions]


def test_a_dozen_faults_or_more_are_planted(record):
    faults = {
        f.item
        for f in record.findings
        if f.mark in {Mark.DOUBT, Mark.FAIL} and any(c.what not in RIGHT for c in f.conclusions)
    }
    assert len(faults) >= 12


def test_every_item_of_the_walk_has_a_finding(record, profile):
    found = {f.item for f in record.findings}
    assert {item.id for item in profile.items() if applies(item, record.claim.model_year)} <= found


def test_a_question_that_a_finding_leaves_names_its_next_step(record, profile):
    bare = [q.item for q in questions(profile, record) if q.needs_next_step and q.item]
    assert bare == []


def test_three_things_cannot_be_seen(record):
    assert len([f for f in record.findings if f.seen is Seen.CANNOT_BE_SEEN]) >= 3


def test_a_conclusion_stands_without_evidence(record):
    bare = [f.item for f in record.findings if f.conclusions and not f.evidence]
    assert bare == ["saddle"]


def test_what_was_not_examined_carries_no_mark(record):
    unseen = [f for f in record.findings if f.seen is not Seen.EXAMINED]
    assert [f.item for f in unseen if f.mark or f.conclusions or f.fitted] == []


def test_two_people_differ_on_the_tool_box_alone(record, profile):
    assert [one.item for one in differences(profile, record)] == ["tool-box"]
    assert {f.by for f in record.findings_at("tool-box")} == {"inspector", "second"}


def test_rim_tyre_and_tap_are_unsafe_and_the_brake_that_works_is_told(record, profile):
    told = safety(profile, record).findings
    assert {one.item for one in told if any(f.unsafe for f in one.findings)} == {"front-rim", "rear-tyre", "fuel-tap"}
    brake = next(one for one in told if one.item == "front-brake")
    assert "works" in str(brake.sentence)
    assert "modified" in str(brake.sentence)


def test_the_frame_keeps_its_doubtful_figure_and_the_fork_its_unread_one(record):
    typed = {r.place: r.typed() for r in record.readings}
    assert typed["frame"] == "6H 15[83]42"
    assert typed["engine"] == "6HE 15842"
    assert typed["gearbox"] == "G 21140"
    fork = next(r for r in record.readings if r.place == "fork")
    assert [f.clarity for f in fork.figures].count(Clarity.UNREADABLE) == 1


def test_one_paper_slips_one_quotes_nothing_and_one_question_was_not_asked(record):
    book = next(p for p in record.papers if p.state is PaperState.COPY)
    assert [q.number for q in book.quoted] == ["6H 15B42"]
    assert [p.id for p in record.papers if not p.quoted] == ["bill-2011"]
    assert [i.about for i in record.inquiries if not (i.sent or i.reply)] == ["Lien"]


def test_what_its_buyer_noted_about_money_gives_a_worth_and_a_highest_price(record, profile):
    told = money(profile, record)
    assert told.worth.as_it_stands.count >= 8
    assert [c.id for c in record.comparables if c.excluded_because] == ["famous-1953"]
    assert {c.kind for c in record.comparables} == set(PriceKind)
    assert 0 < told.deal.hammer.price < record.money.price_asked
    assert all(remedy.item in profile.item_by_id for remedy in record.remedies)


def test_put_without_money_nobody_noted_a_price(tmp_path):
    with opened(tmp_path) as other:
        bare = other.load(put_demo(other, money=False)).record
    assert bare.claim.asking_price
    assert (bare.comparables, bare.adjustments, bare.remedies, bare.money) == ((), (), (), Money())


def test_no_sum_that_its_buyer_noted_reaches_the_sellers_copy(record, profile):
    told = as_text(seller_sheet(profile, record, judge(profile, record), {}, None, AT, 1))
    noted = {f"{c.price:f}" for c in record.comparables} | {"9000", "5800", "5400", "4900"}
    assert not [sum_ for sum_ in noted if sum_ in told.replace(",", "")]


def test_every_id_is_one_of_the_profile(record, profile):
    assert {f.item for f in record.findings} <= set(profile.item_by_id)
    assert {r.place for r in record.readings} <= set(profile.place_by_id)
    assert {q.place for p in record.papers for q in p.quoted} <= set(profile.place_by_id)
    assert {p.item for p in record.photographs if p.item} <= set(profile.item_by_id)
    assert {p.place for p in record.photographs if p.place} <= set(profile.place_by_id)
    assert {q.item for q in record.questions if q.item} <= set(profile.item_by_id)
    for finding in record.findings:
        item = profile.item_by_id[finding.item]
        assert finding.fitted in {"", *(v.id for v in item.variants)}, item.id
        measures = {m.id: m.unit.value for m in item.measures}
        assert {m.measure: m.unit for m in finding.measured}.items() <= measures.items(), item.id


def test_everybody_who_says_something_was_there(record):
    there = {person.id for person in record.people}
    said = chain(record.findings, record.readings, record.statements, record.photographs)
    assert {one.by for one in said} <= there


def test_every_moment_lies_within_the_visit_and_none_runs_back(entered, record):
    times = [timed.at for timed in entered[1]]
    assert times == sorted(times)
    assert times[0] == record.created
    assert {at[:10] for at in times} == {record.claim.date}


def test_photographs_are_kept_byte_for_byte(library, record):
    folder = demo_folder() / "demo"
    assert len({p.sha256 for p in record.photographs}) >= 14
    for photograph in record.photographs:
        assert photograph.sha256 == sha256((folder / photograph.name).read_bytes()).hexdigest()
        assert library.photographs.check(photograph.sha256) is State.OK
    assert {p.name for p in record.photographs} == {p.name for p in folder.glob("*.jpg")}


def test_photographs_are_small_and_stand_upright_as_said(record):
    for photograph in record.photographs:
        path = demo_folder() / "demo" / photograph.name
        assert path.stat().st_size < 220_000
        with Image.open(path) as picture:
            assert ImageOps.exif_transpose(picture).size == (photograph.width, photograph.height)


def test_photographs_lie_in_more_than_one_way_and_one_names_a_place(record):
    orientations = set()
    for path in (demo_folder() / "demo").glob("*.jpg"):
        with Image.open(path) as picture:
            orientations.add(picture.getexif().get(0x0112, 1))
            assert not {0x010F, 0x0110} & set(picture.getexif())
    assert {1, 3, 6, 8} <= orientations
    assert [p.name for p in record.photographs if p.has_place] == ["left-side.jpg"]


def test_history_tells_each_thing_that_was_entered(library, record):
    lines = library.history(DEMO_ID)
    entries = sum(len(getattr(record, part.value)) for part in Part if part not in SINGLE)
    settings = [v for single in (record.claim, record.money) for v in single.model_dump().values() if v]
    assert len(lines) == entries + len(settings)


def test_numbers_and_years_that_disagree_come_out_in_fair_words(record, profile):
    judged = judge(profile, record)
    years, stands = judged.years, {s.places: s for s in judged.standings}
    assert str(years.sentence).startswith("Years: 1953 alone.")
    odd = {a.assembly.value: a.years for a in years.by_assembly if a.odd}
    assert odd == {"gearbox": (1955,), "wheels and brakes": (1956, 1957, 1958), "tinware": (1955,)}
    assert str(stands["frame", "engine"].sentence) == "agree if figure 5 is 8"
    assert str(stands["frame", "gearbox"].sentence).startswith("unusual gap")
    slip = next(p for p in judged.papers if p.paper == "book-copy")
    assert slip.slip == "look-alike"
    struck = " ".join(str(s) for place, s in judged.stamping if place == "frame")
    assert "overstrike" in struck
    assert "depth" in struck


def test_no_word_of_numbers_papers_and_years_blames_or_promises(record, profile):
    judged = judge(profile, record)
    said = (judged.years, judged.standings, judged.papers, judged.paper_years, judged.inquiries, judged.stamping)
    words = json.dumps(plain(said), default=str).casefold()
    for never in ("authentic", "genuine", "original number", "certified", "not stolen", "safe to ride", "market value",
                  "mismatch", "fraud", "fake", "forg", "guilty", "tamper"):  # fmt: skip
        assert never not in words
