"""CB550 K and F: start numbers of frame and engine, single source.

Typed from "CB550 model guide" and "CB550", sohc4.net and sohc4.com, one owners' site (t5). Two numbers are printed one
digit short there. The engine of the first F is left out for that; the frame of the F of 1977, printed 210001, stands as
2100001, worked out from the pattern of the others.
"""

import pytest

from inspector.judgement.decode import Outcome
from inspector.judgement.relations import Stand
from inspector.profile.words import RelationKind
from tests.published.small import literal, machine, row, rule, said, serial, stands

# Model, model year, first frame, first engine.
K = [
    ("K0", 1974, 1000001, 1000001),
    ("K1", 1975, 1200005, 1029182),
    ("K2", 1976, 1230001, 1067334),
    ("K3", 1977, 2000007, 2000001),
    ("K4", 1978, 2100001, 2100001),
]
F = [("F", 1975, 1000002, None), ("F", 1976, 2000003, 1109887), ("F", 1977, 2100001, 1135380)]
F_ENGINES = 1100000  # engines of the F: the block 11xxxxx, worked out from its starts


def start(model, year, first, **more):
    return row(first, None, "t5", model=model, model_year=year, **more)


def k_engine(model, year, first):
    if model != "K2":
        return start(model, year, first)
    return row(first, F_ENGINES - 1, "t5", model=model, model_year=year, inferred=True)


FRAME = [
    rule("k", [literal("CB550"), serial(7)], [start(m, y, frame) for m, y, frame, _ in K]),
    rule("f", [literal("CB550F"), serial(7)], [start(m, y, f, inferred=y == 1977) for m, y, f, _ in F]),
]
ENGINE = [
    rule("k", [literal("CB550E"), serial(7)], [
        *(k_engine(m, y, engine) for m, y, _, engine in K),
        row(F_ENGINES, 1109886, "t5", model="F", inferred=True, says="an F before the start of 1976"),
        row(1109887, 1135379, "t5", model="F", model_year=1976),
        row(1135380, 1199999, "t5", model="F", model_year=1977, inferred=True),
    ]),
]  # fmt: skip
# Starts of frame and engine differ after the first model; those of the K4 are printed equal, so it stays out.
NEVER = {"places": ["frame", "engine"], "kind": "never equal", "years": {"from": 1975, "to": 1977}, "sources": ["t5"]}
FIVE_FIFTY = machine((1974, 1978), sources=["t5"], frame=FRAME, engine=ENGINE, relation=[NEVER])


def models(place, typed):
    return {(*hit.models, *hit.years) for hit in said(FIVE_FIFTY, place, typed).hits}


STARTS = [("frame", f"CB550-{f}", m, y) for m, y, f, _ in K] + [("engine", f"CB550E-{e}", m, y) for m, y, _, e in K]
STARTS += [("frame", f"CB550F-{f}", m, y) for m, y, f, _ in F] + [("engine", f"CB550E-{e}", m, y) for m, y, _, e in F
                                                                   if e]  # fmt: skip


@pytest.mark.parametrize(("place", "typed", "model", "year"), STARTS)
def test_every_start_is_of_its_model_and_year(place, typed, model, year):
    assert models(place, typed) == {(model, year)}


@pytest.mark.parametrize(
    ("place", "typed", "model", "year"),
    [
        ("frame", "CB550-1200004", "K0", 1974),  # or unused: a start runs to the next
        ("frame", "CB550-1230000", "K1", 1975),
        ("frame", "CB550-2000006", "K2", 1976),
        ("frame", "CB550-2100000", "K3", 1977),
        ("frame", "CB550F-2000002", "F", 1975),
        ("frame", "CB550F-2100000", "F", 1976),
        ("engine", "CB550E-1029181", "K0", 1974),
        ("engine", "CB550E-1067333", "K1", 1975),
        ("engine", "CB550E-1135379", "F", 1976),
    ],
)
def test_one_below_a_start_is_of_the_model_before(place, typed, model, year):
    assert models(place, typed) == {(model, year)}


@pytest.mark.parametrize("typed", ["CB550-1000000", "CB550F-1000001"])
def test_below_the_first_start_nothing_is_told(typed):
    assert said(FIVE_FIFTY, "frame", typed).outcome is Outcome.OUTSIDE


def test_the_last_start_has_no_known_end():
    (hit,) = said(FIVE_FIFTY, "frame", "CB550-2999999").hits
    assert (hit.open_end, hit.years) == (True, (1978,))


def test_the_number_printed_one_digit_short_is_told_as_worked_out():
    """Printed 210001; six figures are read by no rule."""
    (hit,) = said(FIVE_FIFTY, "frame", "CB550F-2100001").hits
    assert hit.inferred
    assert said(FIVE_FIFTY, "frame", "CB550F-210001").outcome is Outcome.OUTSIDE


def test_a_pair_of_starts_is_as_built_though_unequal():
    """The K2 of 1976: frame 1230001, engine 1067334."""
    found = stands(FIVE_FIFTY, "CB550-1230001", "CB550E-1067334", 1976)
    assert (found.kind, found.stand, found.raises) == (RelationKind.NEVER_EQUAL, Stand.DIFFER, False)


def test_from_1975_equal_is_the_question():
    found = stands(FIVE_FIFTY, "CB550-1230500", "CB550E-1230500", 1976)  # made up
    assert (found.stand, found.raises) == (Stand.AGREE, True)


def test_of_the_first_model_the_starts_are_equal_and_nothing_is_asked():
    found = stands(FIVE_FIFTY, "CB550-1000001", "CB550E-1000001", 1974)
    assert (found.stand, found.raises) == (Stand.NO_RULE, False)


@pytest.mark.parametrize("number", [1109887, 1120000, 1135380])
def test_an_engine_of_the_eleven_hundred_thousands_is_an_f_engine_in_whatever_frame(number):
    """The engines of the F go on behind the letters of the K."""
    assert {model for model, *_ in models("engine", f"CB550E-{number}")} == {"F"}


def test_before_the_start_of_1976_the_f_engine_gives_no_year():
    """The start of 1975 is printed one digit short."""
    assert said(FIVE_FIFTY, "engine", "CB550E-1105000").years == ()
