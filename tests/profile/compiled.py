"""What every profile compiled from public pages has to be, whichever machine it is of."""

import re
import tomllib
from collections import Counter

from inspector.judgement.judge import judge
from inspector.judgement.route import first_ten, order
from inspector.profile.read import read_profile
from inspector.profile.words import Safety, SourceKind
from inspector.record.begin import new_record
from inspector.record.model import ProfileRef
from inspector.resource import sample_profiles

BARE = "Standard fitting, form not documented here"


def read(name):
    """The profile and its text; nothing in it stops its use, and every fact that counts is vouched for."""
    got = read_profile(sample_profiles() / name)
    assert got.profile is not None, [str(p) for p in got.problems]
    assert [str(p) for p in got.problems if p.stops or "no source" in str(p) or "told apart" in str(p)] == []
    return got


def sources_are_named_and_used(got):
    sources = got.profile.sources
    named = Counter(re.findall(r"\b[st]\d+\b", got.text))
    quoted = {source.id: got.text.count(f"“{source.title}”") for source in sources}
    assert [source.id for source in sources if named[source.id] + quoted[source.id] < 2 or not source.address] == []
    assert len({source.title for source in sources}) == len(sources)
    assert [source.id for source in sources if "“" in source.address] == []
    assert SourceKind.MEMORY not in {source.kind for source in sources}
    assert "MEMORY" not in got.text.upper()


def people_read_titles_and_no_ids(got):
    """An id such as s12 says nothing to somebody at a swap meet."""
    ids = {source.id for source in got.profile.sources}
    assert [words for words in _read(tomllib.loads(got.text)) if ids & set(re.findall(r"\w+", words))] == []


def _read(held, key=""):
    """Every string of the file that people read."""
    if isinstance(held, dict):
        for name, value in held.items():
            yield from _read(value, name)
    elif isinstance(held, list):
        for value in held:
            yield from _read(value, key)
    elif isinstance(held, str) and key not in ("id", "address", "sources"):
        yield held


def forms_say_who_says_so(profile):
    forms = [form for item in profile.items() for form in item.variants]
    assert {form.name for form in forms if not form.sources} == {BARE}
    assert [form.id for form in forms if form.years and not form.sources] == []


def rows_are_of_one_list(profile):
    rows = [row for place in profile.places for rule in place.rules for row in rule.ranges]
    assert rows
    assert [row for row in rows if len(row.sources) != 1] == []


def walk_fits_a_visit(profile):
    """Twenty to forty minutes with a seller present is common practice, no source."""
    assert 20 <= sum(item.minutes for item in profile.items()) <= 40
    spots = [item.spot for item in profile.items()]
    assert all(spot and 10 <= spot.x <= 2230 and 70 <= spot.y <= 1120 for spot in spots)
    assert len({(spot.x, spot.y) for spot in spots}) == len(spots)
    assert {item.safety for item in profile.items() if item.safety} == set(Safety)


def every_year_is_walked_and_judged(profile):
    """With nothing seen yet: every item of the year has a place in the walk, and nothing is taken for seen."""
    blank = new_record("r1", "2020-01-01", ProfileRef(id=profile.id, version=profile.version))
    for year in profile.years:
        record = blank.model_copy(update={"claim": blank.claim.model_copy(update={"model_year": year})})
        assert set(order(profile, record)) >= {item.id for item in profile.items() if item.years.holds(year)}
        assert {"frame-number", "engine-number"} <= set(first_ten(profile, record))
        judged = judge(profile, record)
        assert judged.score.value is None
        assert judged.years.parts == ()


def limits_name_their_country(profile):
    """dsd.state.md.us; law.lis.virginia.gov; motuk.com; gov.uk, inspection manual for motorcycles, 5."""
    tyre, rim = profile.item_by_id["front-tyre"], profile.item_by_id["front-rim"]
    for words in ("Virginia 2/32 in", "Maryland 1/32 in", "United Kingdom 1 mm", "1.5 mm"):
        assert words in tyre.how
    (measure,) = rim.measures
    assert {n.variant: (n.value, n.plus) for n in measure.nominals} == {"steel": (0, 4), "alloy": (0, 2)}
    assert "notchy" in profile.item_by_id["steering-head"].how
    assert "one third" in profile.item_by_id["front-brake-works"].how


CHECKS = (forms_say_who_says_so, rows_are_of_one_list, walk_fits_a_visit, every_year_is_walked_and_judged,
          limits_name_their_country)  # fmt: skip
