"""The years that all firm parts allow, and the fewest to set aside, against every subset of the parts."""

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.said import Strength
from inspector.judgement.together import set_aside, together
from tests.judgement.dated import all_fitted, dated_part, fitted, form, machine, part, years_of
from tests.judgement.make import found, item

YEARS = range(1950, 1961)

ranges = st.dictionaries(
    st.sampled_from([f"p{n}" for n in range(9)]), st.frozensets(st.sampled_from(YEARS), min_size=1), max_size=9
)


def by_every_subset(given):
    """The same answer by looking at every way to set parts aside, the fewest first."""
    for size in range(len(given) + 1):
        ways = {}
        for aside in combinations(given, size):
            kept = [given[key] for key in given if key not in aside]
            left = frozenset.intersection(*kept) if kept else frozenset()
            if left:
                ways[aside] = tuple(sorted(left))
        if ways:
            return ways
    return {}


@settings(max_examples=300)
@given(ranges)
def test_the_fewest_to_set_aside_and_all_ties_are_those_of_every_subset(given):
    years, odd, left = set_aside(given)
    ways = by_every_subset(given)
    if not given:
        assert (years, odd, left) == ((), (), ())
    elif () in ways:
        assert (years, odd, left) == (ways[()], (), ())
    else:
        assert years == ()
        assert dict(zip(odd, left, strict=True)) == ways


spans = st.tuples(st.sampled_from(YEARS), st.integers(0, 6)).map(lambda s: (s[0], min(s[0] + s[1], 1960)))
strengths = st.sampled_from(["firm", "era", "pattern", "told"])


def found_as(key, strength):
    if strength == "era":
        return fitted(key, why=("right for the era",))
    if strength == "told":
        return fitted(key, evidence=("told",))
    return fitted(key, "copy" if strength == "pattern" else "built")


@settings(max_examples=100)
@given(st.lists(st.tuples(spans, strengths), min_size=1, max_size=7))
def test_a_whole_profile_and_record_give_what_every_subset_of_its_firm_parts_gives(drawn):
    copy = {"id": "copy", "name": "copy", "origin": "pattern part"}
    made = machine(*(item(f"i{n}", variant=[form(*span), copy]) for n, (span, _) in enumerate(drawn)))
    answer = years_of(made, *(found_as(f"i{n}", strength) for n, (_, strength) in enumerate(drawn))).together
    firm = {f"i{n}": frozenset(range(a, b + 1)) for n, ((a, b), s) in enumerate(drawn) if s == "firm"}
    ways = by_every_subset(firm)
    assert answer.firm == len(firm)
    assert answer.years == ways.get((), ())
    assert dict(zip(answer.odd, answer.left, strict=True)) == {k: v for k, v in ways.items() if k}


def test_two_firm_ranges_that_meet_in_one_year_give_that_year_only():
    made = machine(part("head", 1953, 1958), part("frame", 1951, 1953))
    answer = years_of(made, *all_fitted(made)).together
    assert answer.years == (1953,)
    assert str(answer.sentence) == "Years: 1953 alone."


def test_a_part_three_years_later_leaves_no_year_and_is_named():
    made = machine(
        part("head", 1953, 1958), part("frame", 1951, 1953), part("lid", 1951, 1954), part("tank", 1956, 1958)
    )
    answer = years_of(made, *all_fitted(made)).together
    assert (answer.years, answer.odd, answer.left) == ((), (("tank",),), ((1953,),))
    assert str(answer.sentence) == "Years: 1953 alone. Odd one out: tank, 1956–58."


def test_ten_parts_right_for_the_era_change_nothing():
    dated = [part("head", 1953, 1958), part("frame", 1951, 1953)]
    more = [part(f"more-{n}", 1955, 1960) for n in range(10)]
    made = machine(*dated, *more)
    firm = (fitted("head"), fitted("frame"))
    era = tuple(fitted(m["id"], why=("right for the era",)) for m in more)
    looks = tuple(found(m["id"], "pass", why=("right type but year not shown",)) for m in more)
    plain, *others = (years_of(made, *firm, *those) for those in ((), era, looks))
    for other in others:
        assert other.together == plain.together
        assert other.weight == plain.weight
        assert [a.years for a in other.by_assembly] == [a.years for a in plain.by_assembly]


def test_every_tie_is_named_with_the_years_it_leaves():
    made = machine(part("head", 1950, 1951), part("frame", 1956, 1957))
    answer = years_of(made, *all_fitted(made)).together
    assert answer.odd == (("frame",), ("head",))
    assert answer.left == ((1950, 1951), (1956, 1957))
    assert answer.best == (1950, 1951, 1956, 1957)
    assert str(answer.sentence) == (
        "Years: none that all parts allow. Set aside frame (1956–57), and 1950–51 is left; "
        "or head (1950–51), and 1956–57 is left."
    )
    assert "two ways" in " ".join(map(str, answer.reasons))


def test_without_firm_parts_no_year_is_shown_and_nothing_contradicts():
    answer = together([dated_part("tank", {1953}, Strength.ERA), dated_part("seat", (), Strength.SILENT)])
    assert (answer.years, answer.odd, answer.left, answer.firm) == ((), (), (), 0)
    assert str(answer.sentence) == "Years: nothing shows one firmly yet."


def test_several_odd_ones_are_named_each_with_its_years():
    keys = {"a": {1953}, "b": {1953}, "c": {1953}, "lamp": {1956}, "tank": {1957, 1958}}
    answer = together([dated_part(k, y) for k, y in keys.items()])
    assert str(answer.sentence) == "Years: 1953 alone. Odd ones out: lamp (1956) and tank (1957–58)."


@given(ranges, st.sampled_from(YEARS))
def test_one_more_firm_part_never_adds_a_year(given, year):
    parts = [dated_part(key, years) for key, years in given.items()]
    before, after = together(parts), together([*parts, dated_part("more", {year})])
    if parts and after.years:
        assert set(after.years) <= set(before.years)
