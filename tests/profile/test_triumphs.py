"""What the five profiles compiled from public pages have in common."""

import re
from collections import Counter

import pytest

from inspector.judgement.judge import judge
from inspector.judgement.route import first_ten, order
from inspector.profile.items import Variant
from inspector.profile.read import read_profile
from inspector.profile.walk import parts
from inspector.profile.words import Safety, SourceKind
from inspector.record.begin import new_record
from inspector.record.model import ProfileRef
from inspector.resource import sample_profiles

NAMES = ("triumph-pre-unit", "triumph-unit-650", "triumph-unit-500", "bsa-triumph-triples", "triumph-cub")
COUNTRIES = ("United Kingdom", "Virginia", "Maryland", "Maine", "North Carolina", "Queensland", "British")


@pytest.fixture(scope="module", params=NAMES)
def got(request):
    return read_profile(sample_profiles() / request.param)


@pytest.fixture(scope="module")
def profile(got):
    assert got.profile is not None, [str(p) for p in got.problems]
    return got.profile


def test_nothing_stops_its_use(got):
    assert [str(p) for p in got.problems if p.stops] == []


def test_every_fact_that_counts_is_vouched_for(got):
    assert [str(p) for p in got.problems if "no source" in str(p)] == []


def test_the_walk_has_enough_to_look_at_and_fits_the_visit(profile):
    """Twenty to forty minutes with a seller present is common practice, no source."""
    items = list(profile.items())
    assert 40 <= len(items) <= 60
    assert 20 <= sum(item.minutes for item in items) <= 40


def test_every_spot_lies_on_the_drawing_and_no_two_on_one_another(profile):
    spots = [item.spot for item in profile.items()]
    assert all(spot and 10 <= spot.x <= 2230 and 70 <= spot.y <= 1120 for spot in spots)
    assert len({(spot.x, spot.y) for spot in spots}) == len(spots)


def test_every_source_has_an_address_and_none_is_memory(profile):
    assert profile.sources
    assert all(source.address for source in profile.sources)
    assert [source.address for source in profile.sources if "“" in source.address] == []
    assert SourceKind.MEMORY not in {source.kind for source in profile.sources}


def test_every_source_that_is_listed_is_used(got, profile):
    named = Counter(re.findall(r"\b[st]\d+\b", got.text))
    quoted = {source.id: got.text.count(f"“{source.title}”") for source in profile.sources}
    assert [source.id for source in profile.sources if named[source.id] + quoted[source.id] < 2] == []


def test_what_people_read_names_a_source_by_its_title(got):
    """An id such as s12 says nothing to somebody at a swap meet."""
    read = re.findall(r'\b(\w+)\s*=\s*"((?:[^"\\]|\\.)*)"', got.text)
    ids = {source.id for source in got.profile.sources}
    named = [words for key, words in read if key not in {"id", "address"} and ids & set(re.findall(r"\w+", words))]
    assert named == []


def test_every_form_with_years_says_who_says_so(profile):
    dated = [form for item in profile.items() for form in item.variants if form.years]
    assert dated
    assert [form.id for form in dated if not form.sources] == []


def test_a_form_that_nobody_documents_dates_nothing(profile):
    bare = [form for item in profile.items() for form in item.variants if not form.sources]
    assert bare
    assert {form.name for form in bare} == {"Standard fitting, form not documented here"}
    assert [form for form in bare if form.years] == []


def test_years_of_a_source_that_disagrees_are_kept_beside_the_others(profile):
    for _, part in parts(profile):
        if isinstance(part, Variant) and part.other_years:
            assert part.disputed
            assert part.note
            assert all(other.sources for other in part.other_years)


def test_every_row_of_numbers_is_of_one_list(profile):
    """A list keeps its own ends; only where the count begins may two pages be named together."""
    rows = [row for place in profile.places for rule in place.rules for row in rule.ranges]
    assert rows
    assert all(len(row.sources) == 1 for row in rows if row.model_year)


def test_places_say_how_to_look_and_that_nothing_is_filed(profile):
    for place in profile.places:
        assert "cloth and a lamp" in place.how_to_read
        assert "Never abrade, etch or file" in place.caution
        assert place.where


def test_every_safety_system_is_looked_at(profile):
    assert {item.safety for item in profile.items() if item.safety} == set(Safety)


@pytest.mark.parametrize("item", ["front-tyre", "front-rim", "front-brake-works", "steering-head", "rear-spokes"])
def test_a_limit_names_the_country_or_state_that_it_holds_in(profile, item):
    """Where one looks, and in the note, which names the source beside each."""
    known = profile.item_by_id[item]
    for words in (known.how, known.note):
        assert any(country in words for country in COUNTRIES)
    assert {source[0] for source in known.sources} <= {"s", "t"}
    titles = {source: profile.source_by_id[source].title for source in known.sources}
    assert all(title in known.note for source, title in titles.items() if source.startswith("t"))


@pytest.mark.parametrize(
    ("item", "words"),
    [
        # law.lis.virginia.gov; dsd.state.md.us; motuk.com; mylicence.sa.gov.au
        ("front-tyre", ("Virginia 2/32 in", "Maryland 1/32 in", "United Kingdom 1 mm", "South Australia", "1.5 mm")),
        ("rear-rim", ("United Kingdom: 4 mm for steel, 2 mm for alloy",)),  # gov.uk, inspection manual, 5
        ("front-brake-works", ("Virginia 2/32 in", "one third")),  # Virginia; gov.uk, notice of June 2019
        ("steering-head", ("lock stops", "notchy")),  # a British test station; Virginia
    ],
)
def test_the_limits_are_those_of_the_official_texts(profile, item, words):
    assert [word for word in words if word not in profile.item_by_id[item].how] == []


@pytest.mark.parametrize("wheel", ["front-rim", "rear-rim"])
def test_rim_limits_are_the_official_ones_and_the_looser_guide_is_told(profile, wheel):
    """gov.uk, inspection manual for motorcycles, 5: 4 mm for steel, 2 mm for alloy rims."""
    item = profile.item_by_id[wheel]
    (measure,) = item.measures
    assert {n.variant: (n.value, n.plus) for n in measure.nominals} == {"steel": (0, 4), "alloy": (0, 2)}
    assert all("s111" in n.sources for n in measure.nominals)
    assert "under 5 mm" in item.note


def test_what_was_not_found_is_said(profile):
    assert any("not found" in one for one in profile.open_questions)


def test_nothing_rests_on_what_a_writer_remembered(got):
    assert "MEMORY" not in got.text.upper()


def test_every_model_year_can_be_walked_and_judged(profile):
    """With nothing seen yet: every item of the year has a place in the walk, and nothing is taken for seen."""
    blank = new_record("r1", "2020-01-01", ProfileRef(id=profile.id, version=profile.version))
    for year in profile.years:
        record = blank.model_copy(update={"claim": blank.claim.model_copy(update={"model_year": year})})
        walked = order(profile, record)
        assert set(walked) >= {item.id for item in profile.items() if item.years.holds(year)}
        assert {"frame-number", "engine-number"} <= set(first_ten(profile, record))
        judged = judge(profile, record)
        assert judged.score.value is None
        assert judged.years.parts == ()


def test_cautions_are_there_before_anything_is_touched(profile):
    words = " ".join(profile.cautions)
    for needed in ("No starting indoors", "No ride before", "Never abrade", "Ask before touching", "authorities"):
        assert needed in words
