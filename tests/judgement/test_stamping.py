"""What was seen of a stamping is listed by how it was seen, and nothing follows from it."""

import pytest

from inspector.judgement.stamping import CAUTION, FEATURES, stamping_said
from inspector.record.reading import Reading, figures_of
from inspector.record.words import HowRead, NumberState, StampSight
from inspector.resource import sample_profiles
from tests.judgement.make import profile, record

ALL = tuple(feature.id for feature in FEATURES)


def said(*readings, made=None):
    return [(place, str(words)) for place, words in stamping_said(made or profile(), record(readings=readings))]


def read(place="frame", sights=None, **more):
    return Reading(
        id=f"{place}-{len(more)}", place=place, figures=figures_of("6H 15842"), stamping=sights or {}, **more
    )


def test_the_features_are_those_that_the_demo_names():
    demo = (sample_profiles() / "brackwater-heron" / "demo" / "demo.toml").read_text("utf-8")
    line = next(line for line in demo.splitlines() if line.startswith("stamping = "))
    assert [feature for feature in ALL if f'"{feature}" = ' in line] == list(ALL)
    assert line.count(" = ") == len(ALL) + 1
    assert all(str(feature.name) and str(feature.look_for) for feature in FEATURES)


def test_each_feature_stands_under_what_was_seen_of_it():
    sights = {"pad surface": StampSight.SEE, "depth": StampSight.DO_NOT_SEE, "line-up": StampSight.CANNOT_SEE,
              "overstrike": StampSight.NOT_LOOKED, "star behind": StampSight.SEE}  # fmt: skip
    assert said(read(sights=sights)) == [(
        "frame",
        "Stamping of the frame number: seen: pad surface, star behind; not seen: depth; could not be seen: line-up;"
        " not looked at: machining marks, spacing, shape of figures, paint in figures, overstrike.",
    )]  # fmt: skip


def test_where_nothing_could_be_seen_that_is_said():
    blind = dict.fromkeys(ALL, StampSight.CANNOT_SEE)
    assert said(read(sights=blind)) == [("frame", "Stamping of the frame number: nothing of it could be seen.")]


@pytest.mark.parametrize("sights", [{}, {"depth": StampSight.NOT_LOOKED}])
def test_where_nobody_looked_that_is_said(sights):
    assert said(read(sights=sights)) == [("frame", "Stamping of the frame number: not looked at.")]


def test_a_photograph_is_named_and_paper_and_hearsay_have_no_stamping():
    sights = dict.fromkeys(ALL, StampSight.SEE)
    ((_, words),) = said(read(sights=sights, how_read=HowRead.PHOTOGRAPH))
    assert words.startswith("Stamping of the frame number, on a photograph: seen: ")
    assert said(read(how_read=HowRead.PAPER), read(how_read=HowRead.TOLD)) == []


@pytest.mark.parametrize("state", [NumberState.COVERED, NumberState.NOT_LOOKED])
def test_where_the_number_was_not_seen_there_is_nothing_to_say(state):
    assert said(Reading(id="r", place="frame", state=state)) == []


def test_a_pad_without_a_number_is_looked_at_like_any_other():
    blank = Reading(id="r", place="frame", state=NumberState.GROUND, stamping={"pad surface": StampSight.DO_NOT_SEE})
    ((_, words),) = said(blank)
    assert "not seen: pad surface" in words


def test_cleaning_names_whose_leave_it_had_or_that_nobody_is_named():
    with_leave = read(cleaned=True, leave_of="R. Quill (invented)")
    assert said(with_leave)[1] == ("frame", "The frame number was cleaned with leave of R. Quill (invented).")
    assert said(read(cleaned=True))[1] == (
        "frame", "The frame number was cleaned; with whose leave is not recorded.",
    )  # fmt: skip


def test_places_come_in_the_profiles_order_and_cast_numbers_have_no_stamping():
    places = [
        {"id": "frame", "name": "Frame number", "where": "lug", "assembly": "frame"},
        {"id": "case", "name": "Casting number", "where": "case", "assembly": "engine", "cast": True},
        {"id": "magneto", "name": "Magneto code", "where": "plate", "assembly": "electrics", "dates_part": True},
    ]
    found = said(read("magneto"), read("nowhere"), read("case"), read("frame"), made=profile(place=places))
    assert [place for place, _ in found] == ["frame", "nowhere"]


def test_the_caution_says_that_crooked_figures_prove_nothing_either_way():
    assert "works figures can be crooked" in str(CAUTION)
