"""Years assembly by assembly, and assemblies that have no year in common."""

from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.assemblies import AssemblyYears, groups_of
from inspector.profile.words import Assembly
from inspector.texts import say
from tests.judgement.dated import NUMBERED, all_fitted, fitted, machine, part, read, years_of
from tests.judgement.make import item

FRAME, ENGINE, FRONT, WHEELS, TINWARE = (
    Assembly.FRAME, Assembly.ENGINE, Assembly.FRONT_END, Assembly.WHEELS, Assembly.TINWARE,
)  # fmt: skip


def of(assembly, allowed):
    allowed = tuple(sorted(allowed))
    return AssemblyYears(assembly, allowed, False, ("part",), (), say("Seen."), left=allowed)


def test_two_machines_made_into_one_are_named_by_what_goes_together():
    made = machine(
        part("frame", 1951, 1953), part("case", 1953, 1954, "engine"),
        part("fork", 1956, 1958, "front end"), part("hub", 1956, 1960, "wheels and brakes"),
    )  # fmt: skip
    answer = years_of(made, *all_fitted(made))
    assert answer.groups == ((FRAME, ENGINE), (FRONT, WHEELS))
    assert str(answer.groups_sentence) == (
        "Frame and engine allow 1953; front end and wheels allow 1956–58 only. "
        "They may come from two machines made into one."
    )


def test_an_assembly_that_would_go_with_either_is_said_to():
    made = machine(
        part("frame", 1951, 1953), part("case", 1953, 1954, "engine"), part("tank", 1950, 1960, "tinware"),
        part("fork", 1956, 1958, "front end"), part("hub", 1956, 1960, "wheels and brakes"),
    )  # fmt: skip
    answer = years_of(made, *all_fitted(made))
    assert answer.groups == ((FRAME, ENGINE, TINWARE), (FRONT, WHEELS))
    assert "; tinware would go with either." in str(answer.groups_sentence)
    assert "two machines" in str(answer.groups_sentence)


def test_one_assembly_by_itself_is_not_called_a_second_machine():
    made = machine(part("frame", 1953, 1953), part("case", 1953, 1954, "engine"), part("tank", 1955, 1958, "tinware"))
    answer = years_of(made, *all_fitted(made))
    assert answer.groups == ((FRAME, ENGINE), (TINWARE,))
    assert str(answer.groups_sentence) == "Frame and engine allow 1953; tinware allows 1955–58 only."


def test_where_one_year_is_common_there_is_one_group_and_nothing_is_said():
    made = machine(part("frame", 1951, 1953), part("case", 1953, 1954, "engine"))
    answer = years_of(made, *all_fitted(made))
    assert answer.groups == ((FRAME, ENGINE),)
    assert answer.groups_sentence is None
    empty = years_of(made)
    assert (empty.groups, empty.groups_sentence) == ((), None)


def test_each_assembly_has_its_own_years_and_the_one_with_an_odd_part_is_odd():
    made = machine(
        part("frame", 1951, 1953), part("case", 1953, 1954, "engine"), part("head", 1952, 1953, "engine"),
        part("tank", 1955, 1958, "tinware"), item("seat", assembly="controls"),
    )  # fmt: skip
    rows = {a.assembly: a for a in years_of(made, *(fitted(i) for i in ("frame", "case", "head", "tank"))).by_assembly}
    assert {a: row.years for a, row in rows.items()} == {
        FRAME: (1951, 1952, 1953), ENGINE: (1953,), TINWARE: (1955, 1956, 1957, 1958), Assembly.CONTROLS: (),
    }  # fmt: skip
    assert [a for a, row in rows.items() if row.odd] == [TINWARE]
    assert str(rows[ENGINE].sentence) == "Engine: 1953, from case and head."
    assert str(rows[Assembly.CONTROLS].sentence) == "Controls: nothing shows a year firmly."
    assert rows[ENGINE].parts == ("case", "head")


def test_a_part_of_every_year_is_not_named_as_showing_one():
    made = machine(part("tyre", 1950, 1960, "wheels and brakes"), part("hub", 1952, 1954, "wheels and brakes"))
    (row,) = years_of(made, *all_fitted(made)).by_assembly
    assert str(row.sentence) == "Wheels: 1952–54, from hub."
    (row,) = years_of(made, fitted("tyre")).by_assembly
    assert str(row.sentence) == "Wheels: 1950–60, every year of the profile."


def test_an_assembly_whose_parts_contradict_each_other_names_them():
    made = machine(
        part("tank", 1955, 1958, "tinware"), part("guard", 1951, 1953, "tinware"), part("box", 1953, 1954, "tinware")
    )
    (row,) = years_of(made, *all_fitted(made)).by_assembly
    assert (row.years, row.left, row.odd_parts, row.odd) == ((), (1953,), ("tank",), True)
    assert str(row.sentence) == (
        "Tinware: no year that all its parts allow: tank (1955–58), guard (1951–53) and box (1953–54)."
    )


def test_a_year_that_hangs_on_a_doubtful_figure_is_marked_with_its_condition():
    made = machine(part("lug", 1952, 1954), place=[NUMBERED])
    (row,) = years_of(made, fitted("lug"), readings=(read("frame", "15[47]00"),)).by_assembly
    assert row.conditional == (1952, 1953)
    assert [str(c) for c in row.conditions] == ["1952 if figure 3 is 4; 1953 if figure 3 is 7"]
    (clear,) = years_of(made, fitted("lug"), readings=(read("frame", "15700"),)).by_assembly
    assert (clear.conditional, clear.conditions) == ((), ())


allowed = st.lists(st.frozensets(st.sampled_from(range(1950, 1957)), min_size=1, max_size=4), min_size=1, max_size=5)


@settings(max_examples=150)
@given(allowed)
def test_the_groups_are_the_fewest_that_each_share_a_year(drawn):
    own = [of(assembly, years) for assembly, years in zip(Assembly, drawn, strict=False)]
    allow = {one.assembly: set(one.left) for one in own}
    groups = groups_of(own)
    assert sorted(a for group in groups for a in group) == sorted(allow)
    assert all(set.intersection(*(allow[a] for a in group)) for group in groups)
    # Giving each assembly one of its years, the fewest years in use are the fewest groups.
    assert len(groups) == min(len(set(chosen)) for chosen in product(*drawn))
