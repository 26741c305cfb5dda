"""A reading as figures that can be one thing or another, and arithmetic on them against numbers written out."""

import itertools

from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.pattern import pattern_of
from inspector.judgement.ranges import all_of, cubes, how_many, largest, smallest
from inspector.record.reading import Figure, figures_of
from inspector.record.words import Clarity


def of(typed, separators=" -./"):
    return pattern_of(figures_of(typed), separators)


def test_separators_and_spaces_are_no_figures_and_letters_are_capitals():
    assert of("6h-15 842").typed(0, 7) == "6H15842"
    assert of("6h-15", "").typed(0, 5) == "6H-15"


def test_figures_are_numbered_as_people_count_them_a_space_being_none():
    """A dash typed is counted, as record.reading.numbered counts it."""
    assert of("6H 15").numbers == (1, 2, 3, 4)
    assert of("6H-15").numbers == (1, 2, 4, 5)


def test_an_unreadable_figure_can_be_anything_and_a_doubtful_one_its_alternatives():
    pattern = of("6H 1[83]?")
    assert pattern.figures == ({"6"}, {"H"}, {"1"}, {"8", "3"}, None)
    assert pattern.doubtful == (3,)
    assert pattern.typed(0, 5) == "6H1[38]?"
    assert pattern.typed(0, 5, {4: "8"}) == "6H18?"


def test_a_figure_probable_in_one_way_only_is_that_figure():
    pattern = of("[7]1")
    assert pattern.figures[0] == {"7"}
    assert pattern.doubtful == ()


def test_a_figure_that_is_a_letter_or_a_dash_is_the_letter():
    assert of("A[-1]2").figures == ({"A"}, {"1"}, {"2"})


def test_small_and_capital_letters_are_one_alternative():
    pattern = pattern_of((Figure(clarity=Clarity.PROBABLE, could_be=("a", "A")),), "")
    assert pattern.figures == ({"A"},)
    assert pattern.doubtful == ()


def test_letters_without_one_capital_stay_as_they_are():
    assert of("ßé").figures == ({"ß"}, {"É"})


digit_sets = st.lists(st.sets(st.sampled_from("0123456789"), max_size=4) | st.just(set("0123456789")), max_size=4)


def written_out(sets):
    return [int("".join(digits) or "0") for digits in itertools.product(*sets)]


@settings(max_examples=200, deadline=None)
@given(digit_sets, st.integers(-5, 11000), st.integers(-5, 11000))
def test_counts_and_bounds_are_those_of_the_numbers_written_out(sets, low, high):
    tidy = tuple("".join(sorted(digits)) for digits in sets)
    fitting = [n for n in written_out(tidy) if low <= n <= high]
    assert all_of(tidy) == len(written_out(tidy))
    assert how_many(tidy, low, high) == len(fitting)
    assert smallest(tidy, low, high) == min(fitting, default=None)
    assert largest(tidy, low, high) == max(fitting, default=None)


@settings(max_examples=200, deadline=None)
@given(digit_sets, st.sets(st.integers(0, 3)), st.integers(0, 9999), st.integers(0, 9999))
def test_cubes_part_the_alternatives_that_leave_a_number_from_those_that_do_not(sets, branching, low, high):
    tidy = tuple("".join(sorted(digits)) for digits in sets)
    at = sorted(n for n in branching if n < len(tidy))
    found = cubes(tidy, at, (), low, high)
    for chosen in itertools.product(*(tidy[n] for n in at)):
        fixed = dict(zip(at, chosen, strict=True))
        left = [fixed.get(n, digits) for n, digits in enumerate(tidy)]
        expected = any(low <= n <= high for n in written_out(left))
        assert [all(fixed[n] == digit for n, digit in cube) for cube in found].count(True) == expected


def test_thirty_unreadable_figures_are_counted_without_being_written_out():
    assert how_many(("0123456789",) * 30, 5, 10**29 + 4) == 10**29


def test_an_alternative_that_is_no_digit_keeps_its_figure_named():
    assert cubes(("1", "0123456789"), [0], [0], 0, 99) == (((0, "1"),),)
