"""The month and year letters from the 1969 season on.

The tables were typed from these pages, not from the profiles: s2 "What year is your Triumph?",
tonup-nc.blogspot.com, April 2015; s4 Dating page, triplesonline.com; s5 "Machine numbering system", tr3oc.com;
s6 "Identify a Triumph model from a frame number", ehow.co.uk; s10 "B50 engine number code",
classicmotorcycles.org.uk. Single examples name theirs beside them. Serials marked so were made up.
"""

import pytest

from inspector.judgement.decode import Outcome
from tests.published.lists import said, years

UNIT, TRIPLES, SMALL = "triumph-unit-650", "bsa-triumph-triples", "triumph-unit-500"
CARRIED = (UNIT, TRIPLES, SMALL)
# s2, s4, s6 whole; s10 all months and years C to J; s5 months to P and years to N.
MONTHS = {"A": 1, "B": 2, "C": 3, "D": 4, "E": 5, "G": 6, "H": 7, "J": 8, "K": 9, "N": 10, "P": 11, "X": 12}
YEARS = {"C": 1969, "D": 1970, "E": 1971, "G": 1972, "H": 1973, "J": 1974, "K": 1975, "N": 1976, "P": 1977,
         "X": 1978, "A": 1979, "B": 1980}  # fmt: skip
UNUSED = "FILMOQRSTUVWYZ"  # in none of the tables
SERIAL = "00500"  # made up


def built(name, typed):
    return {pair for hit in said(name, "engine", typed).hits for pair in hit.built}


def calendar(month, model_year):
    """s4, s5 and s10: August to December lie in the calendar year before the model year."""
    year = model_year - 1 if month >= 8 else model_year
    return {(f"{year}-{month:02}",) * 2}


@pytest.mark.parametrize("name", CARRIED)
@pytest.mark.parametrize("month", MONTHS)
def test_every_pair_of_letters_gives_its_month_and_model_year(name, month):
    for year, model_year in YEARS.items():
        typed = f"{month}{year}{SERIAL}"
        assert years(name, "engine", typed) == years(name, "frame", typed) == (model_year,)
        if month != "H" or model_year < 1976:
            assert built(name, typed) == calendar(MONTHS[month], model_year)


@pytest.mark.parametrize("year", [letter for letter, year in YEARS.items() if year >= 1976])
def test_from_1976_july_is_that_at_the_start_of_the_season_or_at_its_end(year):
    """"What exactly is a 1978 Bonneville", thebonnevilleshop.com: the 1978 season opens with HX00100."""
    model = YEARS[year]
    assert built(UNIT, f"H{year}{SERIAL}") == {(f"{model - 1}-07",) * 2, (f"{model}-07",) * 2}


@pytest.mark.parametrize("name", CARRIED)
@pytest.mark.parametrize("letter", UNUSED)
def test_a_letter_of_no_table_is_not_read_in_either_place(name, letter):
    for typed in (f"{letter}C00123", f"A{letter}00123"):  # serial made up
        answer = said(name, "engine", typed)
        assert (answer.outcome, answer.years) == (Outcome.OUTSIDE, ())
        assert answer.nearest is not None
        assert letter in str(answer.nearest.sentence)


@pytest.mark.parametrize(
    ("typed", "year", "month"),
    [
        ("AC00500", 1969, "1969-01"),  # s4; serial made up
        ("KH00500", 1973, "1972-09"),  # s4; serial made up
        ("NH00500", 1973, "1972-10"),  # s5; serial made up
        ("NC00100T120R", 1969, "1968-10"),  # s2: the first of the scheme, model code behind
        ("NC00125", 1969, "1968-10"),  # an owner's T120R of 1969 with this serial, hermit.cc/tmc; letters by the tables
        ("NE01436", 1971, "1970-10"),  # "1971 Bonneville", classicbritishmotorcycles.net: first of 1971
        ("JH15366", 1973, "1972-08"),  # "1973 Bonneville", the same site: first of 1973
        ("CG50414", 1972, "1972-03"),  # "1972 Bonneville", the same site: low frame from here
    ],
)
def test_quoted_numbers_of_the_twins(typed, year, month):
    assert years(UNIT, "engine", typed) == (year,)
    assert built(UNIT, typed) == {(month, month)}


@pytest.mark.parametrize(
    ("typed", "year", "months"),
    [
        ("HX00100", 1978, {"1977-07", "1978-07"}),  # thebonnevilleshop.com
        ("HN62501", 1976, {"1975-07", "1976-07"}),  # "1976 Bonneville", classicbritishmotorcycles.net
    ],
)
def test_quoted_numbers_with_july_give_both(typed, year, months):
    assert years(UNIT, "engine", typed) == (year,)
    assert {first for first, _ in built(UNIT, typed)} == months


@pytest.mark.parametrize("name", CARRIED)
def test_the_count_begins_at_100(name):
    """s2; s10 keeps the first 99 for experiments."""
    assert years(name, "engine", "NC00100") == (1969,)
    assert said(name, "engine", "NC00099").outcome is Outcome.OUTSIDE


@pytest.mark.parametrize("typed", ["T140E KA13014", "KA13014 T140E", "T140E-KA13014", "t140e ka13014"])
def test_the_letters_are_those_before_the_figures_whatever_the_model_code_holds(typed):
    """s2, s4 and s5: two letters directly before five figures; s4 has the code in front, s2 behind.

    The example is of a model code that ends in a letter; serial made up."""
    answer = said(UNIT, "engine", typed)
    assert answer.years == (1979,)
    assert {hit.models for hit in answer.hits} == {("T140E",)}


@pytest.mark.parametrize(
    ("typed", "model", "year", "month"),
    [
        ("T160 KK06100", "T160", 1975, "1974-09"),  # s4, as printed
        ("DG02010 T150V", "T150V", 1972, "1972-04"),  # s4, code behind
        ("B50SS HE15222", "B50SS", 1971, "1971-07"),  # s10 names the model and its years; serial made up
    ],
)
def test_triples_and_singles_are_read_by_the_same_letters(typed, model, year, month):
    answer = said(TRIPLES, "engine", typed)
    assert answer.years == (year,)
    assert {hit.models for hit in answer.hits} == {(model,)}
    assert built(TRIPLES, typed) == {(month, month)}


def test_four_or_six_figures_are_not_this_scheme():
    """s2, s4: five figures."""
    assert said(UNIT, "engine", "NC0500").outcome is Outcome.OUTSIDE
    assert said(UNIT, "engine", "NC005000").outcome is Outcome.OUTSIDE
