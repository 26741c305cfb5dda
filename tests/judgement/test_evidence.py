"""Which parts and numbers say something firm about the year, and why the others do not."""

import pytest

from inspector.judgement.evidence import Kind, form_parts
from inspector.judgement.number_evidence import number_parts
from inspector.judgement.said import Strength
from inspector.record.finding import Concluded
from inspector.record.words import Conclusion, HowRead, NumberState, Seen, Sureness
from tests.judgement.dated import CODED, NUMBERED, decoded, fitted, form, machine, read
from tests.judgement.make import found, item, record

FIRM, ERA, SILENT = Strength.FIRM, Strength.ERA, Strength.SILENT


def of_forms(*findings, **variant):
    made = machine(item("lamp", variant=[form(1952, 1954, **variant), form(1957, 1958, id="late", name="late form")]))
    (one,) = form_parts(made, record(*findings))
    return one


def of_numbers(*readings, places=(NUMBERED, CODED), **more):
    made, given = machine(item("lamp"), place=list(places), **more), record(readings=readings)
    (one,) = number_parts(made, given, decoded(made, given))
    return one


def test_a_form_of_the_factory_that_somebody_examined_is_firm_and_names_its_source():
    one = of_forms(fitted("lamp"), at="p. 12")
    assert (one.strength, one.years, one.kind) == (FIRM, (1952, 1953, 1954), Kind.MODEL_YEAR)
    assert (one.sources, one.grade, one.what) == (("list",), 3, "as built")
    assert str(one.reason) == "Used 1952–54 by Invented parts list, p. 12."


def test_a_factory_option_is_as_firm_as_the_standard_form():
    assert of_forms(fitted("lamp"), origin="factory option").strength is FIRM


@pytest.mark.parametrize("origin", ["service replacement", "pattern part", "dealer fit", "other model", "other maker"])
def test_what_did_not_leave_the_factory_with_the_machine_says_nothing(origin):
    one = of_forms(fitted("lamp"), origin=origin)
    assert (one.strength, one.years) == (SILENT, ())
    assert str(one.reason)


@pytest.mark.parametrize(
    ("variant", "reason"),
    [
        ({"sources": []}, "The profile names no source for its years."),
        ({"sources": ["recalled"]}, "The only source for its years is memory."),
        ({"years": None}, "The profile gives no years for this form."),
    ],
)
def test_a_form_without_years_or_with_no_source_better_than_memory_says_nothing(variant, reason):
    one = of_forms(fitted("lamp"), **variant)
    assert (one.strength, one.years, str(one.reason)) == (SILENT, (), reason)


@pytest.mark.parametrize("what", [Conclusion.RIGHT_ERA, Conclusion.YEAR_NOT_SHOWN])
@pytest.mark.parametrize("sureness", Sureness)
def test_era_and_right_type_are_kept_as_such(what, sureness):
    assert of_forms(fitted("lamp", why=(Concluded(what=what, sureness=sureness),))).strength is ERA
    assert of_forms(found("lamp", "pass", why=(what,))).strength is ERA


@pytest.mark.parametrize(
    "what",
    [Conclusion.NOT_IDENTIFIED, Conclusion.NEEDS_BOOK, Conclusion.PATTERN, Conclusion.MISSING, Conclusion.OTHER_MAKER],
)
def test_what_was_not_identified_or_is_no_part_of_the_machine_says_nothing(what):
    one = of_forms(fitted("lamp", why=(what,)))
    assert (one.strength, str(one.reason)) == (SILENT, f"Concluded: {what.value}.")


@pytest.mark.parametrize("what", [Conclusion.RIGHT_YEAR, Conclusion.WRONG_YEAR, Conclusion.OPTION, Conclusion.MODIFIED])
def test_a_conclusion_about_the_claimed_year_leaves_the_part_firm(what):
    assert of_forms(fitted("lamp", why=(what,))).strength is FIRM


@pytest.mark.parametrize("evidence", [("told",), ("memory",), ("told", "memory"), ("paper",)])
def test_what_is_only_told_remembered_or_on_paper_says_nothing(evidence):
    one = of_forms(fitted("lamp", evidence=evidence))
    assert one.strength is SILENT
    assert str(one.reason) == f"The only evidence: {', '.join(evidence)}."
    assert of_forms(fitted("lamp", evidence=(*evidence, "shape"))).strength is FIRM


def test_a_form_chosen_without_evidence_recorded_is_taken_and_says_so():
    one = of_forms(fitted("lamp", evidence=()))
    assert one.strength is FIRM
    assert "No evidence recorded" in str(one.reason)


@pytest.mark.parametrize("seen", [s for s in Seen if s is not Seen.EXAMINED])
def test_what_was_not_examined_says_nothing(seen):
    one = of_forms(fitted("lamp", seen=seen))
    assert (one.strength, str(one.reason)) == (SILENT, f"Not examined, but {seen.value}.")
    assert form_parts(machine(item("lamp")), record(found("lamp", seen=seen))) == ()


def test_a_fitted_thing_that_is_none_of_the_forms_says_nothing():
    one = of_forms(found("lamp", "fail", fitted_other="a tractor lamp"))
    assert (one.strength, str(one.reason)) == (SILENT, "“a tractor lamp” is none of the profile's forms.")
    assert of_forms(found("lamp", "pass")).strength is SILENT


def test_sources_that_disagree_widen_the_years_and_the_reason_says_who_says_what():
    other = {"years": {"from": 1955, "to": 1956}, "sources": ["book"], "at": "sheet 4"}
    one = of_forms(fitted("lamp"), disputed=True, other_years=[other])
    assert (one.strength, one.years) == (FIRM, (1952, 1953, 1954, 1955, 1956))
    assert one.sources == ("list", "book")
    assert str(one.reason) == (
        "Used 1952–54 by Invented parts list; 1955–56 by Invented register, sheet 4: "
        "the sources disagree, both are kept."
    )


def test_a_dispute_whose_other_years_are_not_known_narrows_nothing():
    one = of_forms(fitted("lamp"), disputed=True, note="The list says 1952, somebody later.")
    assert one.strength is ERA
    assert "The list says 1952, somebody later." in str(one.reason)


def test_open_ends_are_closed_by_the_years_of_the_profile():
    assert of_forms(fitted("lamp"), years={"from": 1958}).years == (1958, 1959, 1960)
    assert of_forms(fitted("lamp"), years={"to": 1951}).years == (1950, 1951)
    assert of_forms(fitted("lamp"), years={"from": 1970}).strength is SILENT


def test_an_open_end_is_closed_by_the_years_of_the_item_where_it_has_some():
    made = machine(item("lamp", years={"from": 1955, "to": 1957}, variant=[form(None, 1956), form(1956, None, id="b")]))
    given = (fitted("lamp"), fitted("lamp", "b"))
    assert [form_parts(made, record(one))[0].years for one in given] == [(1955, 1956), (1956, 1957)]


def test_two_people_who_date_a_part_apart_are_both_kept_and_their_years_united():
    one = of_forms(fitted("lamp"), fitted("lamp", "late", by="ben"))
    assert (one.strength, one.years) == (FIRM, (1952, 1953, 1954, 1957, 1958))
    assert one.forms == ("late", "built")
    assert str(one.reason) == (
        "ben: Used 1957–58 by Invented parts list. Ann Invented: Used 1952–54 by Invented parts list. "
        "Both are kept, and their years are united."
    )


@pytest.mark.parametrize(
    ("other", "strength"),
    [
        (fitted("lamp", "late", by="ben", why=("right for the era",)), ERA),
        (found("lamp", by="ben", why=("right for the era",)), ERA),
        (found("lamp", by="ben", why=("not identified",)), SILENT),
        (found("lamp", by="ben", fitted_other="something else"), SILENT),
        (fitted("lamp", "late", by="ben", evidence=("told",)), SILENT),
    ],
)
def test_where_one_of_two_people_is_not_firm_the_part_is_not(other, strength):
    one = of_forms(fitted("lamp"), other)
    assert one.strength is strength
    assert "Both are kept" in str(one.reason)


@pytest.mark.parametrize(
    "other",
    [
        fitted("lamp", by="ben"),
        fitted("lamp", by="ben", evidence=("told",)),
        found("lamp", "pass", by="ben"),
        fitted("lamp", "late", by="ben", seen="not seen"),
    ],
)
def test_who_says_the_same_or_nothing_of_the_year_changes_nothing(other):
    one = of_forms(fitted("lamp"), other)
    assert (one.strength, one.years) == (FIRM, (1952, 1953, 1954))


@pytest.mark.parametrize("how", HowRead)
def test_a_number_is_firm_when_read_on_the_machine_and_silent_when_told_or_on_paper(how):
    one = of_numbers(read("frame", "15700", how=how))
    firm = how in (HowRead.METAL, HowRead.PHOTOGRAPH)
    assert (one.id, one.place, one.kind, one.what) == ("number:frame", "frame", Kind.NUMBER, "15700")
    assert (one.strength, one.years) == ((FIRM, (1953,)) if firm else (SILENT, ()))
    said = "Nobody said yet how it was read. Say it on the page Numbers."
    assert str(one.reason) == said if how is HowRead.NOT_SAID else how.value in str(one.reason)


def test_a_probable_figure_gives_years_on_its_condition_and_is_firm_on_their_union():
    one = of_numbers(read("frame", "15[47]00"))
    assert (one.strength, one.years) == (FIRM, (1952, 1953))
    assert one.alternatives[0][0] == (1952,)
    assert str(one.condition) == "1952 if figure 3 is 4; 1953 if figure 3 is 7"


def test_a_probable_figure_that_decides_nothing_gives_no_condition():
    one = of_numbers(read("frame", "157[03]0"))
    assert (one.years, one.condition, one.alternatives) == ((1953,), None, ())


def test_unreadable_figures_leave_every_year_they_allow():
    assert of_numbers(read("frame", "15???")).years == (1952, 1953)


def test_a_block_that_only_memory_vouches_for_says_nothing():
    one = of_numbers(read("frame", "20500"))
    assert (one.strength, str(one.reason)) == (SILENT, "The only source for its years is memory.")


def test_a_number_outside_every_rule_says_nothing():
    assert of_numbers(read("frame", "99999")).strength is SILENT
    assert of_numbers(read("frame", "15700"), places=({**NUMBERED, "rule": []},)).strength is SILENT


@pytest.mark.parametrize("state", [s for s in NumberState if s is not NumberState.READ])
def test_a_place_without_a_number_says_so(state):
    one = of_numbers(read("frame", "", state=state))
    assert (one.strength, str(one.reason)) == (SILENT, f"Not read: {state.value}.")


def months_only(**more):
    """The frame's serials with months of build and no model year."""
    block = {"from": 15000, "to": 15999, "built_from": "1952-10", "built_to": "1953-02", "sources": ["list"], **more}
    return {**NUMBERED, "rule": [{**NUMBERED["rule"][0], "range": [block]}]}


def test_months_of_build_give_the_years_of_the_seasons_they_lie_in():
    one = of_numbers(read("frame", "15700"), places=(months_only(),), season_starts=1)
    assert (one.kind, one.strength, one.years) == (Kind.BUILD_DATE, FIRM, (1952, 1953))
    one = of_numbers(read("frame", "15700"), places=(months_only(),), season_starts=8)
    assert (one.kind, one.years) == (Kind.BUILD_DATE, (1953,))


def test_a_block_worked_out_from_others_says_so():
    block = {"model_year": 1953, "inferred": True}
    one = of_numbers(read("frame", "15700"), places=(months_only(**block),), season_starts=8)
    assert (one.kind, one.years) == (Kind.NUMBER, (1953,))
    assert str(one.reason).endswith("worked out from other figures.")


def test_small_and_capital_letters_are_one_number():
    lettered = {**NUMBERED["rule"][0], "serial": "serial", "segment": [
        {"id": "mark", "kind": "literal", "text": "H"}, *NUMBERED["rule"][0]["segment"],
    ]}  # fmt: skip
    one = of_numbers(read("frame", "H15[47]00"), read("frame", "h15700"), places=({**NUMBERED, "rule": [lettered]},))
    assert one.years == (1953,)


def test_a_rule_of_a_period_that_reads_the_number_and_dates_nothing_leaves_its_years_open():
    bare = {
        "id": "later", "title": "Serials without a season", "sources": ["list"], "years": {"from": 1957, "to": 1958},
        "segment": [{"id": "serial", "kind": "digits", "width": 5}],
    }  # fmt: skip
    one = of_numbers(read("frame", "15700"), places=({**NUMBERED, "rule": [*NUMBERED["rule"], bare]},))
    assert (one.strength, one.years) == (FIRM, (1953, 1957, 1958))
    assert "It can be of 1957–58 as well, of which numbers give no year." in str(one.reason)


def test_two_readings_that_can_be_of_one_number_narrow_each_other():
    one = of_numbers(read("frame", "15[47]00"), read("frame", "1?700", by="ben"))
    assert one.years == (1953,)


def test_two_readings_of_different_numbers_are_both_kept_and_their_years_united():
    one = of_numbers(read("frame", "15400"), read("frame", "15700", by="ben"))
    assert one.years == (1952, 1953)
    assert "the readings differ" in str(one.reason)


def test_a_date_code_allows_every_season_that_was_not_over_when_the_part_was_made():
    one = of_numbers(read("rim", "034"), season_starts=10)
    assert (one.kind, one.strength, one.years) == (Kind.DATE_CODE, FIRM, tuple(range(1954, 1961)))
    assert of_numbers(read("rim", "104"), season_starts=10).years == tuple(range(1955, 1961))
    assert of_numbers(read("rim", "134")).strength is SILENT


def test_a_date_code_after_every_year_of_the_profile_shows_nothing_of_the_machine():
    late = {**CODED["rule"][0]["segment"][1], "plus": [1990]}
    rule = {**CODED["rule"][0], "segment": [CODED["rule"][0]["segment"][0], late]}
    one = of_numbers(read("rim", "034"), places=({**CODED, "rule": [rule]},))
    assert one.strength is SILENT
    assert "after every model year of the profile" in str(one.reason)
