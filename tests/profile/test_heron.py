"""The demonstration profile: whole, sourced, drawn, and within half an hour's walk."""

import math
import re
import tomllib
from collections import Counter
from collections.abc import Iterator
from decimal import Decimal
from itertools import combinations
from pathlib import Path
from xml.etree import ElementTree

import pytest

from inspector.judgement.decode import decode
from inspector.profile.base import Cited, Span
from inspector.profile.expected import expected
from inspector.profile.items import Item
from inspector.profile.model import Profile
from inspector.profile.numbers import NumberRange, NumberRule
from inspector.profile.read import read_profile
from inspector.profile.words import Origin, RelationKind, Safety
from inspector.record.reading import figures_of
from tests.house.project import ROOT
from tests.house.test_words import never_in

FOLDER = ROOT / "sample_profiles" / "brackwater-heron"
FILE = FOLDER / "profile.toml"
SVG = "{http://www.w3.org/2000/svg}"
HERON: Profile = Profile.model_validate(tomllib.loads(FILE.read_text("utf-8")))
ITEMS = tuple(HERON.items())
BY_ID = HERON.item_by_id
PICTURES = tuple(sorted({form.picture for item in ITEMS for form in item.variants if form.picture}))


def rules(place: str) -> tuple[NumberRule, ...]:
    return HERON.place_by_id[place].rules


def blocks(place: str, serial: int) -> list[NumberRange]:
    """The blocks of a place, of its five-figure rules, that hold the serial."""
    every = (block for rule in rules(place) for block in rule.ranges if not block.wraps)
    return [block for block in every if block.first <= serial <= (block.last or block.first)]


def dated(item: Item) -> Iterator[tuple[str, Cited]]:
    """Every fact of an item that speaks of years, with a name for it."""
    if item.years != Span():
        yield item.id, item
    for form in item.variants:
        if form.years is not None or form.serials:
            yield f"{item.id}/{form.id}", form
    for measure in item.measures:
        for number, nominal in enumerate(measure.nominals):
            yield f"{item.id}/{measure.id}/{number}", nominal


def test_nothing_stops_its_use_and_its_only_remark_is_the_fact_from_memory() -> None:
    read = read_profile(FOLDER)
    memory = FILE.read_text("utf-8").splitlines().index('sources = ["works-tester"]')
    assert read.profile == HERON
    assert [memory - 10 < problem.line <= memory + 1 for problem in read.problems if problem.line] == [True]
    assert len(read.problems) == 1


def test_maker_and_every_source_say_that_they_are_invented() -> None:
    assert HERON.invented
    assert [s.id for s in HERON.sources if not s.note.startswith("Invented.")] == []
    assert [a.name for a in HERON.authors if "(invented)" not in a.name] == []


def test_the_walk_has_nine_stations_and_sixty_two_items() -> None:
    assert [len(station.items) for station in HERON.stations] == [4, 14, 8, 11, 9, 6, 4, 3, 3]
    assert ITEMS[13].id == "carburettor"
    assert sum(len(item.variants) for item in ITEMS) >= 200


def test_the_walk_takes_half_an_hour_or_a_little_more() -> None:
    assert 25 <= sum(item.minutes for item in ITEMS) <= 45


def test_the_numbers_come_first() -> None:
    assert {"frame-number", "engine-number"} <= {item.id for item in HERON.stations[0].items}


def test_places_have_rules_and_relations_change_with_the_year() -> None:
    ruled = {place.id for place in HERON.places if place.rules}
    assert {"frame", "engine", "gearbox", "fork", "carburettor-body", "magneto"} <= ruled
    pair = [r for r in HERON.relations if r.places == ("frame", "engine")]
    assert [r.kind for r in pair] == [RelationKind.SAME_SERIAL, RelationKind.SAME, RelationKind.CLOSE]
    assert {r.kind for r in HERON.relations} == set(RelationKind)


@pytest.mark.parametrize(("place", "code", "built"), [
    ("carburettor-body", "K2", {("1952-10", "1952-10"), ("1962-10", "1962-10")}),
    ("magneto", "11 53", {("1952-11", "1952-11")}),
])  # fmt: skip
def test_a_code_of_months_dates_the_part_and_not_the_machine(
    place: str, code: str, built: set[tuple[str, str]]
) -> None:
    """A part made in a month fits a machine of that season or of a later one."""
    known = HERON.place_by_id[place]
    assert known.dates_part
    assert {pair for hit in decode(HERON, known, figures_of(code)).hits for pair in hit.built} == built


@pytest.mark.parametrize("year", HERON.years)
def test_frame_and_engine_have_one_relation_in_each_year(year: int) -> None:
    holding = [r for r in HERON.relations if r.places == ("frame", "engine") and r.years.holds(year)]
    assert len(holding) == 1


@pytest.mark.parametrize(
    ("serial", "year", "month"), [(15842, 1953, "1952-10"), (15342, 1952, "1952-08"), (15900, 1953, "1952-10")]
)
def test_a_frame_serial_tells_its_season_and_month(serial: int, year: int, month: str) -> None:
    (block,) = blocks("frame", serial)
    assert (block.model_year, block.built_from, block.built_to) == (year, month, month)


def test_the_start_of_the_1955_season_is_kept_as_two_sources_have_it() -> None:
    assert {block.model_year for block in blocks("frame", 19800)} == {1954, 1955}


def test_frame_blocks_of_sold_machines_leave_only_the_works_own_numbers_out() -> None:
    held = {n for rule in rules("frame")[:2] for r in rule.ranges for n in range(r.first, (r.last or r.first) + 1)}
    assert set(range(10001, 26481)) - held == set(range(11571, 11601))


def test_every_build_month_lies_in_its_season() -> None:
    """The season starts in August of the year before; the works stop of 1952 ran into the next August."""
    late = []
    for block in (b for rule in (*rules("frame"), *rules("engine")) for b in rule.ranges):
        if block.model_year and block.built_from and block.built_to:
            season = f"{block.model_year - 1}-{HERON.season_starts:02d}", f"{block.model_year}-07"
            late += [block.built_to] if not season[0] <= block.built_from <= block.built_to <= season[1] else []
    assert late == ["1952-08", "1952-08"]


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.id)
def test_an_item_has_an_expected_form_in_each_year_it_applies_in(item: Item) -> None:
    bare = [y for y in HERON.years if item.years.holds(y) and not item.optional and not expected(item, y)]
    assert bare == []


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.id)
def test_every_dated_fact_names_a_source(item: Item) -> None:
    assert [name for name, fact in dated(item) if not fact.sources] == []


def test_every_block_relation_and_year_note_names_a_source_and_where_in_it() -> None:
    facts: list[Cited] = [*HERON.relations, *HERON.year_notes]
    facts += [block for place in HERON.places for rule in place.rules for block in (rule, *rule.ranges)]
    assert [fact for fact in facts if not fact.sources or not fact.at] == []


def test_no_two_forms_of_an_item_can_be_taken_for_each_other() -> None:
    twins = [
        (item.id, one.id, other.id)
        for item in ITEMS
        for one, other in combinations(item.variants, 2)
        if (one.years, one.tell) == (other.years, other.tell) or not one.tell
    ]
    assert twins == []


def test_forms_come_from_everywhere_that_parts_come_from() -> None:
    assert {form.origin for item in ITEMS for form in item.variants} == set(Origin)
    assert sum(1 for item in ITEMS for form in item.variants if form.serials) >= 8


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.id)
def test_pattern_parts_and_parts_of_others_date_nothing(item: Item) -> None:
    undated = {Origin.PATTERN, Origin.OTHER_MODEL, Origin.OTHER_MAKER}
    assert [form.id for form in item.variants if form.origin in undated and form.years] == []


def test_altered_forms_date_nothing_and_say_that_they_were_altered() -> None:
    altered = [form for item in ITEMS for form in item.variants if form.origin is Origin.FACTORY and not form.years]
    assert len(altered) >= 5
    assert [form.id for form in altered if not form.note.startswith("Altered after it left the works")] == []


def test_disputed_facts_keep_both_sides_and_say_how_they_differ() -> None:
    disputed = [(item.id, form) for item in ITEMS for form in item.variants if form.disputed]
    assert Counter(item for item, _ in disputed) == {"rear-lamp": 1, "front-brake": 2}
    assert [form.id for _, form in disputed if "Both are kept" not in form.note] == []
    (drum,) = BY_ID["front-brake"].measures
    assert {n.value for n in drum.nominals if n.years.holds(1953)} == {7, 8}
    tube = BY_ID["fork-legs"].measures[0]
    assert {n.value for n in tube.nominals if n.years.holds(1953)} == {1.25, 1.3125}


def test_a_1953_carburettor_is_twin_float_or_the_option() -> None:
    twin, single = expected(BY_ID["carburettor"], 1953)
    assert (twin.detail, twin.sources, twin.at) == ("body stamped 61", ("list-1953",), "page 41")
    assert (single.origin, single.serials[0].first, single.at) == (Origin.OPTION, 15900, "sheet 7")


def test_safety_covers_every_system() -> None:
    assert {item.safety for item in ITEMS if item.safety} == set(Safety)


def test_measures_costs_and_unknown_hours_are_there() -> None:
    costs = [cost for item in ITEMS for cost in item.costs]
    assert sum(len(item.measures) for item in ITEMS) >= 15
    assert len(costs) >= 25
    assert sum(cost.hours is None for cost in costs) >= 2
    assert {cost.currency for cost in costs} == {"GBP"}
    assert max(Counter(cost.job for cost in costs if cost.job).values()) >= 3


def test_points_add_up_as_a_known_scheme_does() -> None:
    """25 headings of 4 points in steps of 0.25, 6 for three of them: 18 lost leaves 82, below 85.

    Source: a national antique motorcycle club's judging, "100 point bikes" and "New judging criteria
    introduced", forum.antiquemotorcycle.org (threads 309107 and 7669).
    """
    assert HERON.points is not None
    headings = HERON.points.headings
    heavy = {h.id for h in headings if h.most_lost == 6}
    assert (len(headings), sum(h.points for h in headings), HERON.points.step) == (25, 100, Decimal("0.25"))
    assert heavy == {"frame", "engine", "paint"}
    left = sum(h.points for h in headings) - sum(h.most_lost or 0 for h in headings)
    assert left == 82 < min(t.points for t in HERON.points.thresholds if t.points)
    assert {item.heading for item in ITEMS} - {None} == {h.id for h in headings}


def test_what_to_bring_home_and_what_misleads() -> None:
    assert len(HERON.shots) >= 14
    assert {"frame", "engine", "gearbox", "fork"} <= {shot.place for shot in HERON.shots}
    assert len(HERON.traps) >= 10
    assert [note.year for note in HERON.year_notes] == list(HERON.years)


def test_spots_lie_on_the_drawing_and_apart_from_each_other() -> None:
    """A sign is 3.6 mm of 77 mm for 2220 units, about 100 units; nine tenths of one parts two signs."""
    spots = [(item.id, item.spot) for item in ITEMS if item.spot]
    assert len(spots) == len(ITEMS)
    assert [i for i, s in spots if not (10 <= s.x <= 2230 and 70 <= s.y <= 1120)] == []
    near = [
        (a, b)
        for (a, s), (b, t) in combinations(spots, 2)
        if s.view is t.view and math.dist((s.x, s.y), (t.x, t.y)) < 90
    ]
    assert near == []


def test_cautions_stand_where_the_act_is_done() -> None:
    pads = [place.id for place in HERON.places if place.identity and "Never abrade, etch or file" not in place.caution]
    wordless = [item.id for item in ITEMS if item.safety and item.safety is not Safety.CONTROL and not item.caution]
    assert pads == []
    assert wordless == []


def test_no_text_promises_what_an_inspection_cannot_know() -> None:
    texts = [FILE, *(FOLDER / picture for picture in PICTURES)]
    assert {path.name: never_in(path.read_text("utf-8")) for path in texts if never_in(path.read_text("utf-8"))} == {}


def test_pictures_named_and_pictures_in_the_folder_are_the_same() -> None:
    lying = {path.relative_to(FOLDER).as_posix() for path in (FOLDER / "pictures").iterdir()}
    assert set(PICTURES) == lying
    assert len(PICTURES) >= 12


def inside(number: str) -> bool:
    return -1 <= float(number) <= 401


@pytest.mark.parametrize("picture", PICTURES)
def test_a_picture_is_a_line_drawing_in_ink_on_paper(picture: str) -> None:
    root = ElementTree.fromstring(Path(FOLDER / picture).read_text("utf-8"))
    shapes = [shape for shape in root.iter() if shape.tag in {f"{SVG}path", f"{SVG}ellipse"}]
    colours = {shape.get(key) for shape in root.iter() for key in ("fill", "stroke")} - {None, "none"}
    points = [n for shape in shapes for n in re.findall(r"-?\d+\.\d", shape.get("d", ""))]
    assert (root.tag, root.get("viewBox")) == (f"{SVG}svg", "0 0 400 280")
    assert root.findtext(f"{SVG}title")
    assert colours == {"#1B2230", "#6A675E", "#FBFAF6"}
    assert len(shapes) > 10
    assert all(inside(number) for number in points)
