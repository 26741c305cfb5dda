"""Date codes against the claimed build, and the claimed build read from what was entered."""

import pytest

from inspector.judgement.claimed_build import claimed_build, months_in, span_of_months
from inspector.judgement.dates import dated
from inspector.judgement.season import model_year_of, month_of, month_text, season
from inspector.record.claim import Claim
from inspector.record.words import NumberState
from tests.judgement.dated import CODED, NUMBERED, decoded, machine, read
from tests.judgement.make import item, record

AMBIGUOUS = {
    **CODED,
    "id": "tyre",
    "name": "Tyre code",
    "rule": [{
        "id": "week-year", "title": "Week and last figure of the year", "sources": ["book"],
        "segment": [
            {"id": "week", "kind": "digits", "width": 2, "gives": "week of build"},
            {"id": "year", "kind": "digits", "width": 1, "gives": "year of build", "plus": [1940, 1950]},
        ],
    }],
}  # fmt: skip


def dates(*readings, claim=None, places=(CODED, AMBIGUOUS, NUMBERED), **more):
    made = machine(item("lamp"), place=list(places), **{"season_starts": 8, **more})
    given = record(readings=readings, claim=claim or Claim(model_year=1953))
    return dated(made, given, decoded(made, given))


def test_a_code_later_than_the_claimed_build_cannot_be_original_to_it():
    (one,) = dates(read("rim", "083"))
    assert (one.place, one.typed, one.built, one.sources) == ("rim", "083", (("1953-08", "1953-08"),), ("list",))
    assert (one.later_than_claim, one.early, one.depends) == (True, False, False)
    assert str(one.sentence) == (
        "Rim code 083: made August 1953. Later than the season of the claimed 1953, August 1952 to July 1953: "
        "it cannot be original to a machine built by then."
    )


@pytest.mark.parametrize("code", ["073", "082", "012", "081"])
def test_a_code_of_the_season_or_within_the_usual_lag_agrees(code):
    (one,) = dates(read("rim", code))
    assert (one.later_than_claim, one.early) == (False, False)
    assert "It agrees with the season of the claimed 1953" in str(one.sentence)


def test_a_code_earlier_than_is_usual_is_a_question():
    (one,) = dates(read("rim", "071"))
    assert (one.later_than_claim, one.early) == (False, True)
    assert "At least 13 months before the season of the claimed 1953" in str(one.sentence)
    assert "usually it is 12 at most. To be asked." in str(one.sentence)


def test_without_a_usual_lag_an_earlier_code_is_no_question():
    (one,) = dates(read("rim", "070"), places=({**CODED, "usual_lag_months": None},))
    assert (one.later_than_claim, one.early) == (False, False)
    assert "how much earlier is usual, the profile does not say" in str(one.sentence)


def test_an_ambiguous_decade_keeps_every_possibility():
    (one,) = dates(read("tyre", "103"))
    assert one.built == (("1943-03", "1943-03"), ("1953-03", "1953-03"))
    assert (one.later_than_claim, one.early, one.depends) == (False, False, True)
    assert "made March 1943 or March 1953" in str(one.sentence)
    assert "If March 1943: At least 113 months before" in str(one.sentence)
    assert "If March 1953: It agrees" in str(one.sentence)


def test_where_no_possibility_fits_the_earlier_one_is_the_question():
    (one,) = dates(read("tyre", "104"))
    assert (one.built[0][0], one.built[1][0]) == ("1944-03", "1954-03")
    assert (one.later_than_claim, one.early, one.depends) == (False, True, True)


@pytest.mark.parametrize("code", ["X3", "133", "0823", "AUG 53"])
def test_a_code_of_a_style_that_is_not_in_the_profile_is_not_read(code):
    (one,) = dates(read("rim", code))
    assert (one.built, one.later_than_claim, one.early) == ((), False, False)
    assert str(one.sentence).endswith("a code of this style is not in the profile, so it is not read.")


def test_only_places_that_date_their_part_are_looked_at():
    assert dates(read("frame", "15700")) == ()


def test_a_place_without_a_code_says_what_was_found():
    (one,) = dates(read("rim", "", state=NumberState.COVERED))
    assert str(one.sentence) == "Rim code: cannot be seen."


def test_a_code_that_was_told_says_so():
    (one,) = dates(read("rim", "083", how="told"))
    assert "Rim code 083 (told): made" in str(one.sentence)


def test_the_claimed_build_date_stands_before_the_claimed_year():
    (one,) = dates(read("rim", "123"), claim=Claim(model_year=1953, build_date="November 1952, as told"))
    assert one.later_than_claim
    assert "Later than the claimed build date, November 1952" in str(one.sentence)
    (one,) = dates(read("rim", "112"), claim=Claim(model_year=1953, build_date="November 1952, as told"))
    assert not one.later_than_claim


def test_without_a_claim_nothing_is_compared():
    (one,) = dates(read("rim", "083"), claim=Claim())
    assert (one.later_than_claim, one.early) == (False, False)
    assert "No year is claimed, so it is not compared." in str(one.sentence)


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("October 1952, as told by the seller", ("1952-10", "1952-10")),
        ("Oct 1952", ("1952-10", "1952-10")),
        ("14th Sept. 1952", ("1952-09", "1952-09")),
        ("1952-10-14", ("1952-10", "1952-10")),
        ("10/1952", ("1952-10", "1952-10")),
        ("14.10.1952", ("1952-10", "1952-10")),
        ("12/10/1952", ("1952-10", "1952-12")),
        ("31/31/1952", ("1952-01", "1952-12")),
        ("1952", ("1952-01", "1952-12")),
        ("it may have been 1952", ("1952-01", "1952-12")),
        ("may 1952", ("1952-05", "1952-05")),
        ("May 1952", ("1952-05", "1952-05")),
        ("May be 1952", ("1952-01", "1952-12")),
        ("May have left the works in 1952", ("1952-01", "1952-12")),
        ("1952 or 1953", None),
        ("March or April 1952", None),
        ("unknown", None),
        ("", None),
    ],
)
def test_a_build_date_is_read_where_it_speaks_of_one_month_or_year(text, span):
    assert months_in(text) == (None if span is None else tuple(map(month_of, span)))


def test_a_build_date_that_cannot_be_read_leaves_the_claimed_season():
    made = machine(item("lamp"), season_starts=10)
    claim = claimed_build(made, record(claim=Claim(model_year=1953, build_date="before the strike")))
    assert (month_text(claim.first), month_text(claim.last)) == ("1952-10", "1953-09")


@pytest.mark.parametrize("starts", range(1, 13))
def test_every_month_lies_in_the_season_of_its_model_year(starts):
    made = machine(item("lamp"), season_starts=starts)
    for month in range(month_of("1951-01"), month_of("1954-12")):
        first, last = season(made, model_year_of(made, month))
        assert first <= month <= last == first + 11


def test_spans_of_months_read_as_people_say_them():
    assert str(span_of_months(month_of("1954-03"), month_of("1954-03"))) == "March 1954"
    assert str(span_of_months(month_of("1954-01"), month_of("1954-12"))) == "1954"
    assert str(span_of_months(month_of("1953-12"), month_of("1954-01"))) == "December 1953 to January 1954"
