"""Decoding is what writing out every number gives: the same rows, on the same conditions, years and count."""

import random
from math import prod

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.decode import decode
from inspector.profile.numbers import Place
from inspector.profile.read import read_profile
from inspector.record.reading import figures_of
from inspector.resource import sample_profiles
from tests.judgement.make import profile
from tests.judgement.oracle import ALPHABET, same

LETTERS = "ABD"
SMALL = LETTERS + "01239"
YEARS = range(1950, 1955)
MACHINE = profile()

code = st.text(LETTERS + "12", min_size=1, max_size=2)


@st.composite
def tables(draw, name, gives):
    rows = [{"code": text, **draw(meaning(gives))} for text in draw(st.lists(code, min_size=1, max_size=4))]
    return {"id": name, "kind": "table", "gives": gives, "codes": rows, "optional": draw(st.booleans())}


def meaning(gives):
    if gives == "model year":
        return st.sampled_from(YEARS).map(lambda year: {"model_year": year})
    if gives == "month of build":
        return st.integers(1, 12).map(lambda month: {"month": month})
    return st.just({})


@st.composite
def digits(draw, name, gives="other"):
    low = draw(st.integers(1, 2))
    high = draw(st.integers(low, 3))
    plus = draw(st.lists(st.sampled_from([1900, 1940, 1950]), max_size=2)) if gives == "model year" else []
    return {"id": name, "kind": "digits", "gives": gives, "min_width": low, "max_width": high, "plus": plus,
            "optional": draw(st.booleans())}  # fmt: skip


@st.composite
def ranges(draw, letters):
    first = draw(st.integers(0, 120))
    last = draw(st.sampled_from([None, first + 9, 250, 999, first // 2]))
    row = {
        "from": first,
        "to": last,
        "wraps": last is not None and last < first,
        "prefix": draw(st.sampled_from(["", "", "", *letters])),
        "suffix": draw(st.sampled_from([*[""] * 6, *letters])),
        "sources": draw(st.sampled_from([["list"], ["book"], ["list", "book"], []])),
    }
    told = draw(st.sampled_from(["one", "span", "none"]))
    if told == "one":
        row["model_year"] = draw(st.sampled_from(YEARS))
    elif told == "span":
        row["years"] = {"from": 1951, "to": draw(st.sampled_from([1951, 1953]))}
    return row


@st.composite
def rules(draw, name="r"):
    lead = {"id": "lead", "kind": "literal", "text": draw(st.sampled_from(["A", "AB", "D"])),
            "optional": draw(st.booleans())}  # fmt: skip
    segments = [lead, draw(tables("model", "model")), draw(tables("year", "model year") | digits("year", "model year"))]
    serial = {**draw(digits("serial")), "optional": False}
    names = ["lead", "model", "year", "serial"]
    orders = draw(st.lists(st.permutations(names).flatmap(shortened), min_size=1, max_size=2))
    letters = ["A", "B", "AB"]
    rows = draw(st.lists(ranges(letters), min_size=draw(st.sampled_from([0, 2, 3])), max_size=4))
    return {
        "id": name,
        "title": name,
        "segment": [*segments, serial],
        "orders": orders,
        "serial": "serial",
        "range": rows,
        "never_used": draw(st.sampled_from(["", "D"])),
        "sources": ["list"],
    }


def shortened(names):
    """The order with the first letters or the year left out at will, the serial never."""
    return st.sets(st.sampled_from(["lead", "model", "year"])).map(lambda out: [n for n in names if n not in out])


@st.composite
def numbers(draw, rule):
    """A number that follows the rule, its serial near a block, or anything at all."""
    by_id = {segment["id"]: segment for segment in rule["segment"]}
    signs = []
    for name in draw(st.sampled_from(rule["orders"])):
        segment = by_id[name]
        if segment.get("optional") and draw(st.booleans()):
            continue
        if "codes" in segment:
            signs += draw(st.sampled_from(segment["codes"]))["code"]
        elif "text" in segment:
            signs += segment["text"]
        else:
            signs += draw(figures_for(segment, rule["range"]))
    return signs or ["1"]


def figures_for(segment, rows):
    low, high = segment["min_width"], segment["max_width"]
    near = [row["from"] + more for row in rows for more in (-1, 0, 1, 40)] + [row["to"] or 0 for row in rows]
    known = [str(n).zfill(low) for n in near if n >= 0 and len(str(n)) <= high]
    free = st.text("01239", min_size=low, max_size=high)
    return free | st.sampled_from(known) if known else free


@st.composite
def readings(draw, rule):
    """The number as read: some figures unreadable, some doubtful, now and then one wrong, too many or too few."""
    signs = list(draw(numbers(rule)))
    spoil = draw(st.sampled_from([*[""] * 9, "drop", "add", "change"]))
    at = draw(st.integers(0, len(signs) - 1))
    if spoil:
        signs[at : at + 1] = {"drop": [], "add": [signs[at], "1"], "change": [draw(st.sampled_from(SMALL))]}[spoil]
    dim = draw(st.lists(st.integers(0, 8), max_size=5, unique=True))
    for n, at in enumerate(at for at in dim if at < len(signs)):
        other = draw(st.sampled_from(SMALL))
        signs[at] = draw(
            st.sampled_from(["?" if n < 2 else signs[at], f"[{signs[at]}{other}]", f"[{other}{signs[at]}]"])
        )
    return "".join(signs) or "1"


def place_of(*made):
    data = {"id": "p", "name": "P", "where": "there", "assembly": "frame", "rule": list(made)}
    return Place.model_validate(data)


made = rules("a").flatmap(lambda one: st.tuples(st.just(one), st.none() | rules("b"), readings(one)))


@settings(max_examples=250, deadline=None)
@given(made)
def test_every_decode_is_what_writing_out_every_number_gives(drawn):
    one, other, typed = drawn
    place = place_of(*(rule for rule in (one, other) if rule))
    figures = figures_of(typed)
    same(MACHINE, place, figures, decode(MACHINE, place, figures), alphabet=SMALL + "45678")


@settings(max_examples=60, deadline=None)
@given(made, st.sampled_from(YEARS))
def test_a_year_asked_for_leaves_out_other_years_and_nothing_else(drawn, year):
    one, _, typed = drawn
    place = place_of(one)
    every = decode(MACHINE, place, figures_of(typed))
    asked = decode(MACHINE, place, figures_of(typed), year)
    assert asked.hits == tuple(hit for hit in every.hits if year in hit.years or not hit.years)
    assert bool(asked.hits) or asked.nearest is not None or not every.hits


def numbers_like(place, rng):
    """A number of one of the place's rules, its serial in or near one of the blocks."""
    rule = rng.choice(place.rules)
    by_id = {segment.id: segment for segment in rule.segments}
    parts = []
    for name in rng.choice(rule.sequences()):
        segment = by_id[name]
        if segment.optional and rng.random() < 0.5:
            continue
        if segment.codes:
            parts.append(rng.choice(segment.codes).code)
        elif segment.text:
            parts.append(segment.text)
        else:
            low, high = segment.widths()
            near = rng.choice(rule.ranges).first + rng.randint(-3, 300) if rule.ranges else rng.randrange(10**low)
            parts.append(str(max(near, 0)).zfill(low)[:high])
    return rng.choice(["", " "]).join(parts)


def blurred(text, rng):
    """The number with up to six figures unreadable or doubtful, now and then one too many, too few or wrong."""
    signs = list(text)
    if rng.random() < 0.2:
        at = rng.randrange(len(signs))
        signs[at : at + 1] = rng.choice([[], [signs[at], "7"], [rng.choice("FQ3K")]])
    for at in rng.sample(range(len(signs)), min(len(signs), rng.randint(0, 6))):
        if signs[at] != " ":
            signs[at] = rng.choice(["?", f"[{signs[at]}{rng.choice('01357DKR')}]", f"[{signs[at]}]"])
    return "".join(signs)


def ways(figures):
    """How many numbers the reading can be."""
    return prod(len(figure.could_be) or len(ALPHABET) for figure in figures)


MOST = 100  # numbers written out for one reading, at most
TIMES = 5000


@pytest.mark.parametrize("name", ["brackwater-heron", "triumph-unit-650"])
def test_ten_thousand_random_readings_are_decoded_as_the_slow_way_does_where_it_can(name):
    machine = read_profile(sample_profiles() / name).profile
    places = [place for place in machine.places if place.rules]
    rng = random.Random(name)
    compared = 0
    for n in range(TIMES):
        place = rng.choice(places)
        figures = figures_of(blurred(numbers_like(place, rng), rng) or "?")
        decoded = decode(machine, place, figures)
        assert bool(decoded.hits) == (decoded.serials > 0)
        assert (decoded.outcome.value == "read by rule") == bool(decoded.hits)
        if n % 20 == 0 and ways(figures) <= MOST:
            same(machine, place, figures, decoded)
            compared += 1
    assert compared > 80
