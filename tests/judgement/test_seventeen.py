"""A number of 17 characters is checked as read: doubtful figures, markets, old machines, and what stays unseen."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.check_digit import VALUES, agrees, check_digit, count_agreeing
from inspector.judgement.seventeen import check_seventeen
from inspector.judgement.seventeens import in_north_america, seventeens
from inspector.record.reading import Reading, figures_of
from inspector.record.words import HowRead
from tests.judgement.make import profile, record

GOOD = "1M8GDM9AXKP042788"


def checked(typed, year=1989, **more):
    return check_seventeen(figures_of(typed), year, **more)


def reasons(result):
    return [str(r) for r in result.reasons]


@pytest.mark.parametrize("typed", ["6H 15842", "DU24875", "", GOOD + "1", GOOD[:-1]])
def test_a_number_of_another_length_is_none_of_these(typed):
    result = checked(typed)
    assert (result.applies, result.valid, result.fault, result.years, result.blind) == (False, None, False, (), ())
    assert reasons(result)[0].startswith("Not applicable: ")


@pytest.mark.parametrize("year", [1903, 1953, 1979])
def test_before_about_1981_the_rules_do_not_apply_even_to_seventeen_characters(year):
    result = checked(GOOD, year)
    assert (result.applies, result.valid, result.fault) == (False, None, False)
    assert str(year) in reasons(result)[0]


def test_in_1980_they_can_apply_and_the_reason_is_given():
    result = checked("1J9RP1A36A1644345", 1980)
    assert (result.applies, result.valid) == (True, True)
    assert any("not every machine of 1980" in r for r in reasons(result))


@pytest.mark.parametrize(
    "typed", [GOOD, "1M8 GDM9A XK P042788", "*1M8GDM9AXKP042788*", "1M8-GDM9AXKP-042788", GOOD.lower()]
)
def test_spaces_dashes_stars_and_small_letters_do_not_count(typed):
    result = checked(typed)
    assert (result.applies, result.valid, result.maker, result.serial) == (True, True, "1M8", "042788")


@pytest.mark.parametrize(
    ("market", "fault"), [(True, True), (None, False), (False, False)], ids=["within", "unknown", "outside"]
)
def test_a_wrong_check_digit_is_a_fault_only_where_one_was_required(market, fault):
    result = checked("SGZCZ43D13S812715", 2003, north_america=market)
    assert (result.valid, result.fault, result.expected) == (False, fault, "X")
    told = reasons(result)
    assert "The check digit would be X; position 9 is read as 1." in told
    assert any("elsewhere no check digit is required" in r for r in told) == (market is None)
    assert any("this is no fault" in r for r in told) == (market is False)
    assert any("Read the number again" in r for r in told) == (market is not False)


def test_position_ten_outside_north_america_is_no_fault():
    result = checked("ZDM1UA4X00B012345", 1995, north_america=False)
    assert (result.years, result.fault) == ((), False)
    assert "Position 10 is 0, which is no year code." in reasons(result)
    assert "Outside North America position 10 need not be a year." in reasons(result)


def test_a_claimed_year_that_the_code_does_not_give_is_said_beside_it():
    told = reasons(checked(GOOD, 1985, north_america=True))
    assert "Position 10 is K: model year 1989 or 2019; on a motorcycle the number does not tell which." in told
    assert "Claimed is 1985." in told
    assert not any("Claimed" in r for r in reasons(checked(GOOD, 2019, north_america=True)))


def test_a_doubtful_figure_is_settled_where_the_check_digit_allows_one():
    result = checked("1M8GDM9AXKP0427[83]8", north_america=True)
    assert (result.valid, result.candidates, result.candidate_count) == (None, (GOOD,), 1)
    assert "Of 2 numbers that it could be, the check digit allows 1." in reasons(result)
    assert "Position 16 can only be 8." in reasons(result)


def test_an_unreadable_figure_leaves_its_blind_class():
    result = checked("1M8GDM9AXKP04278?", north_america=True)
    assert set(result.candidates) == {GOOD[:-1] + c for c in "8HY"}
    assert "Position 17 can only be 8, H or Y." in reasons(result)


def test_an_unread_check_digit_is_worked_out_and_not_filled_in():
    result = checked("1M8GDM9A?KP042788", north_america=True)
    assert (result.expected, result.valid, result.candidates) == ("X", None, (GOOD,))


def test_where_no_alternative_agrees_the_number_is_read_again():
    result = checked("1M8GDM9AXKP0427[39]8", north_america=True)
    assert (result.valid, result.fault, result.candidates, result.candidate_count) == (False, True, (), 0)


def test_outside_north_america_the_check_digit_rules_out_nothing():
    result = checked("1M8GDM9AXKP0427[83]8", north_america=False)
    assert set(result.candidates) == {GOOD, "1M8GDM9AXKP042738"}
    assert any("it rules out none of 2 numbers" in r for r in reasons(result))


def test_a_forbidden_letter_is_named_with_what_looks_like_it_and_never_replaced():
    result = checked("1M8GDM9AXKPO42788", north_america=True)
    assert (result.forbidden, result.valid, result.candidates) == ((12,), False, ())
    assert reasons(result)[0] == (
        "Position 12 is read as O, which such numbers never use. 0 looks like it."
        " With 0 there the check digit would agree."
    )


def test_an_alternative_that_is_never_used_falls_away_and_that_is_said():
    result = checked("1M8GDM9AXKP[0O]42788", north_america=True)
    assert (result.forbidden, result.valid) == ((), True)
    assert "Position 12 cannot be O: I, O and Q are never used there." in reasons(result)


def test_a_sign_that_is_neither_letter_nor_figure_is_named_too():
    result = checked("1M8GDM9AXKP#42788")
    assert result.forbidden == (12,)
    assert "Position 12 is read as #, which such numbers never use." in reasons(result)


def test_a_third_character_that_may_be_nine_is_said():
    result = checked("1J[89]RP1A36A1644345")
    assert not result.low_volume
    assert any(r.startswith("If position 3 is 9") for r in reasons(result))


def test_what_the_check_cannot_see_is_said_for_the_very_number():
    told = [str(b) for b in checked(GOOD).blind]
    assert "Position 1: if A or J were read as 1, the check digit would not show it." in told
    assert "Position 16: if H or Y were read as 8, the check digit would not show it." in told
    assert not any(b.startswith("Position 9:") for b in told)
    assert not any(b.startswith("Position 12:") for b in told)  # 0 shares its value with nothing


def test_blind_look_alikes_come_first():
    told = [str(b).split(":")[0] for b in checked(GOOD).blind]
    assert told[:4] == ["Position 1", "Position 5", "Position 14", "Position 2"]  # 1 and J, D and U, 2 and S; then M


def test_neighbours_that_could_be_changed_over_unseen_are_named_and_no_others():
    number = "1J9RP1A36A1644345"
    told = [str(b) for b in checked(number, 1990).blind if "changed over" in str(b)]
    unseen = [
        f"Positions {at + 1} and {at + 2}, changed over, would not show."
        for at in range(16)
        if number[at] != number[at + 1]
        and agrees(number[:at] + number[at + 1] + number[at] + number[at + 2 :]) == agrees(number)
    ]
    assert told == unseen
    assert unseen


@settings(max_examples=40)
@given(st.lists(st.sets(st.sampled_from("0123ABX"), min_size=1, max_size=2), min_size=17, max_size=17))
def test_counting_equals_listing(sets):
    choices = tuple(tuple(sorted(s)) if n % 3 == 0 else (min(s),) for n, s in enumerate(sets))
    assert count_agreeing(choices) == sum(agrees("".join(number)) for number in product(*choices))


def test_seventeen_unread_figures_are_counted_and_not_listed():
    result = checked("?" * 17, north_america=True)
    assert (result.valid, result.candidates, result.years, result.expected) == (None, (), (), "")
    assert result.candidate_count == count_agreeing((tuple(VALUES),) * 17)


@given(st.text(alphabet=sorted(VALUES), min_size=17, max_size=17), st.sampled_from([True, False, None]))
def test_a_number_made_to_agree_is_never_a_fault(body, market):
    number = body[:8] + check_digit(body) + body[9:]
    result = checked(number, 1990, north_america=market)
    assert (result.valid, result.fault, result.expected) == (True, False, number[8])


@pytest.mark.parametrize(
    ("market", "answer"),
    [("USA", True), (" Canada ", True), ("North America", True), ("England", False), ("home", None), ("", None)],
)
def test_a_market_says_whether_a_check_digit_was_required(market, answer):
    assert in_north_america(market) is answer


def test_readings_of_a_record_are_checked_by_its_year_and_market():
    given_ = Reading(id="r", place="frame", figures=figures_of("SGZCZ43D13S812715"), how_read=HowRead.PHOTOGRAPH)
    made = record(year=2003, readings=(given_,))
    american = made.model_copy(update={"claim": made.claim.model_copy(update={"market": "USA"})})
    (line,) = seventeens(profile(), american)
    assert (line.reading, line.place, line.name, line.typed) == ("r", "frame", "Frame number", "SGZCZ43D13S812715")
    assert (line.how_read, line.result.fault) == (HowRead.PHOTOGRAPH, True)
    assert seventeens(profile(), made)[0].result.fault is False


def test_old_numbers_are_not_bothered_with_and_short_frame_numbers_of_later_years_are_not_applicable():
    readings = (
        Reading(id="f", place="frame", figures=figures_of("6H 15842")),
        Reading(id="e", place="engine", figures=figures_of("6HE 15842")),
    )
    assert seventeens(profile(), record(year=1953, readings=readings)) == ()
    (line,) = seventeens(profile(), record(year=1985, readings=readings))
    assert (line.reading, line.result.applies) == ("f", False)
