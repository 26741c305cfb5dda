"""17-character numbers against published ones and against a general library.

Numbers, each with its source:
- 49 CFR 565.6, Table V of the older edition: sample calculation (1G4AH59H45G118341).
- NHTSA, guide for new manufacturers: a maker of few machines, 9 in the third place (1J9RP1A36A1644345).
- an encyclopedia's article on the number: 11111111111111111, the worked example 1M8GDM9AXKP042788, the misread pair
  5GZCZ43D13S812715 / SGZCZ43D13S812715, and WP0ZZZ99ZTS392124 of a market without check digit.
- public test suites of several libraries: 1HGCM82633A004352.

The library is vininfo (BSD-3), as a comparison only. Its quirks: it refuses I, O and Q and any other length with an
exception; its check also refuses U, Z and 0 in position 10 unless ``check_year=False``; its years end at next year by
the computer's clock and know nothing of motorcycles; its makers' names are not compared.
"""

import string

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from vininfo import ValidationError, Vin

from inspector.judgement.check_digit import VALUES, WEIGHTS, agrees, check_digit, contribution
from inspector.judgement.seventeen import YEAR_CODES, check_seventeen, years_of
from inspector.record.reading import figures_of

WORKED = [
    ("11111111111111111", "8 7 6 5 4 3 2 10 0 9 8 7 6 5 4 3 2", 89, "1"),
    ("1M8GDM9AXKP042788", "8 28 48 35 16 12 18 10 0 18 56 0 24 10 28 24 16", 351, "X"),
    ("1G4AH59H45G118341", "8 49 24 5 32 15 18 80 0 45 56 7 6 40 12 12 2", 411, "4"),
    ("1J9RP1A36A1644345", "8 7 54 45 28 3 2 30 0 9 8 42 24 20 12 12 10", 314, "6"),
    ("5GZCZ43D13S812715", "40 49 54 15 36 12 6 40 0 27 16 56 6 10 28 3 10", 408, "1"),
    ("SGZCZ43D13S812715", "16 49 54 15 36 12 6 40 0 27 16 56 6 10 28 3 10", 384, "X"),
    ("1HGCM82633A004352", "8 56 42 15 16 24 4 60 0 27 8 0 0 20 12 15 4", 311, "3"),
]
VALID = [number for number, _, _, digit in WORKED if number[8] == digit]
# An encyclopedia's table of the year codes, with two letters of NHTSA (interpretation 9753a: 1993 is P, 1994 is R).
YEARS = {
    "A": 1980, "B": 1981, "C": 1982, "D": 1983, "E": 1984, "F": 1985, "G": 1986, "H": 1987, "J": 1988, "K": 1989,
    "L": 1990, "M": 1991, "N": 1992, "P": 1993, "R": 1994, "S": 1995, "T": 1996, "V": 1997, "W": 1998, "X": 1999,
    "Y": 2000, "1": 2001, "2": 2002, "3": 2003, "4": 2004, "5": 2005, "6": 2006, "7": 2007, "8": 2008, "9": 2009,
}  # fmt: skip
# Characters of equal value, worked out from the table of values of 49 CFR 565.15(c).
CLASSES = ("AJ1", "BKS2", "CLT3", "DMU4", "ENV5", "FW6", "GPX7", "HY8", "RZ9", "0")
numbers = st.text(alphabet=sorted(VALUES), min_size=17, max_size=17)


def checked(number, year=1990, **more):
    return check_seventeen(figures_of(number), year, **more)


@pytest.mark.parametrize(("number", "products", "total", "digit"), WORKED, ids=[w[0] for w in WORKED])
def test_each_worked_number_gives_the_published_products_sum_and_digit(number, products, total, digit):
    made = [weight * VALUES[character] for weight, character in zip(WEIGHTS, number, strict=True)]
    assert made == [int(product) for product in products.split()]
    assert sum(made) == total
    assert check_digit(number) == digit
    result = checked(number)
    assert (result.expected, result.valid) == (digit, number[8] == digit)


def test_a_number_of_a_market_without_check_digit_is_no_fault():
    number = "WP0ZZZ99ZTS392124"  # sum 459, so an 8 would stand where it has a Z
    total = sum(weight * VALUES[character] for weight, character in zip(WEIGHTS, number, strict=True))
    result = checked(number, 1996, north_america=False)
    assert (total, result.expected, result.valid, result.fault) == (459, "8", False, False)
    assert "Outside North America no check digit is required: this is no fault." in [str(r) for r in result.reasons]


def test_a_maker_of_few_machines_is_named_by_six_characters():
    result = checked("1J9RP1A36A1644345", 1980, north_america=True)
    assert (result.low_volume, result.maker, result.serial) == (True, "1J9644", "345")
    other = checked("1G4AH59H45G118341", 2005, north_america=True)
    assert (other.low_volume, other.maker, other.serial) == (False, "1G4", "118341")


@pytest.mark.parametrize("code", sorted(VALUES))
def test_position_ten_gives_both_years_or_none(code):
    expected = (YEARS[code], YEARS[code] + 30) if code in YEARS else ()
    assert years_of((code,)) == expected
    number = "1M8GDM9AX" + code + "P042788"
    assert checked(number).years == expected


def test_the_codes_are_thirty_and_five_signs_are_none():
    assert "".join(YEARS) == YEAR_CODES
    assert set(string.ascii_uppercase + string.digits) - set(YEAR_CODES) == set("IOQUZ0")


@pytest.mark.parametrize("seventh", ["9", "A"])
def test_position_seven_says_nothing_of_a_motorcycles_year(seventh):
    # 73 FR 23367 of 30 April 2008: the rule is for cars and light trucks; motorcycles are not bound by it.
    assert checked("1M8GDM" + seventh + "AXKP042788").years == (1989, 2019)


def test_the_library_refuses_a_zero_in_position_ten_unless_told_not_to_look():
    number = "1M8GDM9A30P042788"
    assert (Vin(number).verify_checksum(), Vin(number).verify_checksum(check_year=False)) == (False, True)
    assert (checked(number).valid, checked(number).years) == (True, ())


@given(numbers)
@example("1M8GDM9A30P042788")
def test_the_check_agrees_with_the_library(number):
    library = Vin(number)
    assert agrees(number) == library.verify_checksum(check_year=False)
    assert agrees(number) == (checked(number).valid is True)
    assert library.verify_checksum() == (agrees(number) and number[9] not in "UZ0")
    assert checked(number).low_volume == library.manufacturer_is_small


@pytest.mark.parametrize("number", ["1M8GDM9AXKPO42788", "IM8GDM9AXKP042788", "1M8QDM9AXKP042788"])
def test_forbidden_letters_are_refused_by_the_library_and_named_here(number):
    with pytest.raises(ValidationError):
        Vin(number)
    result = checked(number)
    assert result.forbidden == tuple(p for p, c in enumerate(number, start=1) if c in "IOQ")
    assert result.valid is False


@given(numbers, st.integers(0, 16), st.sampled_from(sorted(VALUES)))
def test_every_single_wrong_character_outside_the_blind_classes_is_caught(body, at, wrong):
    number = body[:8] + check_digit(body) + body[9:]
    assert agrees(number)
    changed = number[:at] + wrong + number[at + 1 :]
    blind = at != 8 and any(wrong in group and number[at] in group for group in CLASSES)
    assert agrees(changed) == (changed == number or blind)


@pytest.mark.parametrize("group", CLASSES)
def test_the_blind_classes_are_those_of_equal_value(group):
    assert len({VALUES[c] for c in group}) == 1
    assert {c for c in VALUES if VALUES[c] == VALUES[group[0]]} == set(group)
    for at in (p for p in range(1, 18) if p != 9):
        assert len({contribution(at, c) for c in group}) == 1


@given(numbers, st.integers(0, 15))
def test_neighbours_of_unequal_value_changed_over_are_caught_away_from_position_nine(body, at):
    number = body[:8] + check_digit(body) + body[9:]
    one, other = number[at], number[at + 1]
    swapped = number[:at] + other + one + number[at + 2 :]
    if 8 not in (at, at + 1):
        assert agrees(swapped) == (VALUES[one] == VALUES[other])


# Stamped look-alikes that pass unseen and that are caught, worked out from the table of values.
@pytest.mark.parametrize(("pair", "seen"), [("1J", False), ("S2", False), ("VN", False), ("DU", False),
    ("5S", True), ("8B", True), ("2Z", True), ("6G", True), ("1L", True), ("0D", True), ("38", True), ("PR", True),
    ("FE", True)])  # fmt: skip
def test_look_alikes_that_the_check_sees_and_does_not_see(pair, seen):
    body = "1M8GDM9AXKP0427" + pair[0] + "8"
    number = body[:8] + check_digit(body) + body[9:]
    assert agrees(number[:15] + pair[1] + number[16:]) is not seen
