"""What does not fit together in a profile: each kind with its line, its remedy and its weight."""

import pytest

from inspector.profile.read import read_profile
from tests.profile.samples import GOOD, changed, line_of

STOPS = [
    # old, new, marker of the line, words of the problem, words of the remedy
    ('id = "told"', 'id = "list" #2', "#2", "used twice", "another id"),
    ('id = "engine"\nname = "Engine n', 'id = "frame" #2\nname = "Engine n', "#2", "used twice", "another id"),
    ('id = "right"', 'id = "left" #2', "#2", "used twice", "another id"),
    ('id = "lamp"', 'id = "carburettor" #2', "#2", "used twice", "another id"),
    ('id = "late"', 'id = "early" #2', "#2", "used twice", "another id"),
    ('id = "drain"', 'id = "strip" #2', "#2", "used twice", "another id"),
    ('id = "replace"', 'id = "rebush" #2', "#2", "used twice", "another id"),
    ("[[trap]]", '[[shot]]\nid = "whole" #2\nname = "x"\n[[trap]]', "#2", "used twice", "another id"),
    ("[[year_note]]",
     '[[trap]]\nid = "copy" #2\ntitle = "x"\ntext = "y"\n[[year_note]]', "#2", "used twice", "another"),
    ("[[shot]]",
     '[[points.heading]]\nid = "engine" #2\nname = "x"\npoints = 1\n[[shot]]', "#2", "used twice", "another"),
    ('id = "month", kind', 'id = "letter", kind', 'text = "T"', "used twice", "another id"),
    ('to = 1951 }\nsources = ["list"]', 'to = 1951 }\nsources = ["lst"]', '"lst"', "no source", '"list"'),
    ('place = "engine"', 'place = "engin"', '"engin"', "no place", '"engine"'),
    ('places = ["frame"]', 'places = ["fame"]', '"fame"', "no place", '"frame"'),
    ('places = ["frame", "engine"]', 'places = ["frame", "gear"]', '"gear"', "no place", "use one of"),
    ('place = "engine"', 'heading = "engines"', '"engines"', "no heading", '"engine"'),
    ('job = "strip"', 'job = "strop"', '"strop"', "no job", '"strip"'),
    ('needs = ["strip"]', 'needs = ["strop"]', '"strop"', "no job", '"strip"'),
    ('item = "lamp"', 'item = "lump"', '"lump"', "no item", '"lamp"'),
    ('items = ["lamp"]', 'items = ["lump"]', '"lump"', "no item", '"lamp"'),
    ('after = ["rebush"]', 'after = ["rebash"]', '"rebash"', "no remedy", '"rebush"'),
    ('excludes = ["rebush"]', 'excludes = ["rebash"]', '"rebash"', "no remedy", '"rebush"'),
    ('{ variant = "early"', '{ variant = "erly"', '"erly"', "no variant", '"early"'),
    ('sources = ["list"]\n[[station.item.variant]]',
     'sources = ["list"]\nserials = [{ place = "fram", from = 1 }]\n[[station.item.variant]]',
     '"fram"', "no place", '"frame"'),
    ('["letter", "count"],', '["leter", "count"],', "leter", "no segment", '"letter"'),
    ('["letter", "count"],', "[],", "[],", "empty", "segment ids"),
    ('["letter", "count"],', '["letter"],', '["letter"],', "missing from this order", "add it"),
    ('serial = "count"', 'serial = "cont"', '"cont"', "not a digits", '"count"'),
    ('serial = "count"\n', "", "[[place.rule]]", "no serial", "digits segment"),
    ('{ code = "A", month = 1 },\n    { code = "B", month = 2 },', '{ code = "IO", month = 1 }', "codes = [",
     "letters never used", "never_used"),
    ('text = "T"', 'text = "T-"', '"T-"', "never reads", "separators"),
    ('text = "T"', 'text = "O"', '"O"', "never reads", "never_used"),
    ("to = 900", "to = 90000", "[[place.rule.range]]", "more figures", "width"),
    ('prefix = "T"', 'prefix = "X"', '"X"', "prefix", "add the segment"),
    ('prefix = "T"', 'suffix = "X" #2', "#2", "suffix", "add the segment"),
    ('text = "T"', 'text = "T", plus = [1900]', "plus = [1900]", "has plus", "digits"),
    ('id = "count", kind = "digits", width = 4', 'id = "count", kind = "digits", width = 4, plus = [1900]', "plus = ",
     "has plus", "take plus out"),
    ('{ id = "count", kind', '{ id = "year", kind = "digits", gives = "model year", width = 2, optional = true },\n'
     '  { id = "count", kind', 'id = "year"', "no model year can be written", "plus"),
    ("width = 4", 'width = 4, gives = "day of build"', 'gives = "day of build"', "is counted", "segment of their own"),
    ('places = ["frame", "engine"]', 'places = ["frame", "frame"]', '"frame", "frame"', "itself", "different"),
    ('needs = ["strip"]', 'needs = ["drain"]', 'needs = ["drain"]', "waits for itself", "ring"),
    ('name = "Carburettor off"', 'name = "x"\nneeds = ["drain"]', 'needs = ["drain"]', "waits for itself", "ring"),
    ('job = "strip"', 'after = ["replace"]', 'after = ["replace"]', "waits for itself", "ring"),
]  # fmt: skip

WARNS = [
    ("years = { from = 1952 }", "years = { from = 1953 }", "{ from = 1953", "outside", "other model"),
    ("years = { from = 1952 }", "years = { from = 1953 }", '[[station.item]]\nid = "carb', "1952", "add a variant"),
    ('"square bowl"\nyears = { from = 1952 }', '"round bowl"\nyears = { from = 1951 }',
     '[[station.item.variant]]\nid = "late"', "told apart", "tell"),
    ('"Late body"\ntell = "square bowl"\nyears = { from = 1952 }', '"Early body"\nyears = { from = 1951 }',
     '[[station.item.variant]]\nid = "late"', "told apart", "tell"),
    ('kind = "same number"\n', 'kind = "same number"\nsources = ["list"]\n[[relation]] #2\n'
     'places = ["engine", "frame"]\nkind = "close"\n', "#2", "both said", "part the years"),
    ('to = 1951 }\nsources = ["list"]', "to = 1951 }", '[[station.item.variant]]\nid = "early"', "no source",
     "sources"),
    ('to = 1951 }\nsources = ["list"]', 'to = 1951 }\nsources = ["told"]',
     '[[station.item.variant]]\nid = "early"', "no source", "sources"),
    ('title = "Letter and serial"\nsources = ["list"]', 'title = "Letter and serial"',
     '[[place.rule.range]]', "no source", "sources"),
    ('title = "Letter and serial"\nsources = ["list"]', 'title = "Letter and serial"', '{ code = "A", month',
     "no source", "sources"),
    ('prefix = "T"\nfrom = 101', 'sources = ["told"]\nprefix = "T"\nfrom = 101', '[[place.rule.range]]', "no source",
     "sources"),
    ('to = 1951 }\nsources = ["list"]', 'to = 1951 }\nsources = ["list"]\nother_years = [\n{ years = { to = 1950 } } ]',
     "{ years = { to", "no source", "sources"),
    ('plus = 0.1, sources = ["list"]', "plus = 0.1", "nominal = [", "no source", "sources"),
    ('text = "New lamp."\nsources = ["list"]', 'text = "New lamp."', "[[year_note]]", "no source", "sources"),
    ('where = "Below the barrel"', 'where = "x"\ndates_part = true #2', "#2", "dates the part", "dates_part out"),
    ('where = "Below the barrel"', 'where = "x"\nusual_lag_months = 3 #2', "#2", "dates no part", "dates_part = true"),
    ('never_used = "IO"', 'never_used = "IO"\ndouble_months_from = 1951 #2', "#2", "without double_months",
     "name the months"),
    ('kind = "same number"', 'kind = "same number"\ngap_points = [[1, 2]] #2', "#2", "close", "correct the kind"),
    ('places = ["frame", "engine"]\nkind = "same number"',
     'places = ["engine", "frame"]\nkind = "close"\ngap_points = [[1, 2]] #2', "#2", "names a serial", "other way"),
    ('tell = "round bowl"', 'tell = "round bowl"\npicture = "gone.png"', "gone.png", "not there", "put the file"),
]  # fmt: skip


def problems(folder, text, marker):
    (folder / "profile.toml").write_text(text, encoding="utf-8")
    got = read_profile(folder)
    line = line_of(text, marker)
    return got, [p for p in got.problems if p.line == line]


@pytest.mark.parametrize(("old", "new", "marker", "what", "remedy"), STOPS)
def test_what_breaks_a_profile_stops_it_with_line_and_remedy(tmp_path, old, new, marker, what, remedy):
    got, found = problems(tmp_path, changed(old, new), marker)
    assert got.profile is None
    assert any(p.stops and what in str(p.what) and remedy in str(p.mend) for p in found), got.problems


@pytest.mark.parametrize(("old", "new", "marker", "what", "remedy"), WARNS)
def test_what_is_only_weak_is_said_and_does_not_stop(tmp_path, old, new, marker, what, remedy):
    text = changed(old, new)
    got, found = problems(tmp_path, text, marker)
    assert got.profile is not None, got.problems
    assert any(not p.stops and what in str(p.what) and remedy in str(p.mend) for p in found), got.problems


@pytest.mark.parametrize(
    ("season", "month", "word", "what"),
    [
        (9, "", "double_months = [8]", "no segment of rule"),
        (9, "", "month_before_season = true", "no segment of rule"),
        (6, "month = 1", "month_before_season = true", "the season starts in month 6"),
    ],
)
def test_words_about_the_season_that_change_nothing_are_said(tmp_path, season, month, word, what):
    text = changed('code = "A", month = 1', f'code = "A"{", " if month else ""}{month}')
    text = text if month else changed('gives = "month of build", ', "", text).replace(", month = 2", "")
    text = changed("season_starts = 9", f"season_starts = {season}", text)
    got, found = problems(tmp_path, changed('never_used = "IO"', f'never_used = "IO"\n{word} #2', text), "#2")
    assert got.profile is not None
    assert any(not p.stops and what in str(p.what) for p in found), got.problems


def test_rules_that_read_dates_and_letters_behind_are_well(tmp_path):
    year = '{ id = "year", kind = "digits", gives = "model year", width = 2, plus = [1900], optional = true },'
    text = changed('{ id = "count", kind', f'{year}\n  {{ id = "count", kind')
    text = changed('prefix = "T"', 'prefix = "t"\nsuffix = "A"', text)
    text = changed('where = "Left of the head"', 'where = "x"\ndates_part = true\nusual_lag_months = 3', text)
    text = changed('kind = "same number"', 'kind = "close"\ngap_points = [[1, 2], [9, -4]]', text)
    assert problems(tmp_path, text, "format")[0].problems == ()


def test_relations_by_different_sources_may_disagree(tmp_path):
    more = '[[relation]]\nplaces = ["engine", "frame"]\nkind = "close"\nsources = ["other"]\n[[station]]\nid = "left"'
    text = changed('[[station]]\nid = "left"', more)
    text = changed("[[place]]", '[[source]]\nid = "other"\nkind = "press"\ntitle = "x"\n[[place]]', text)
    got, _ = problems(tmp_path, text, "format")
    assert got.problems == ()


@pytest.mark.parametrize(
    "add",
    [
        "optional = true\n",
        "years = { to = 1951 }\n",
    ],
)
def test_an_item_that_some_or_later_machines_lack_needs_no_form_for_them(tmp_path, add):
    text = changed("years = { from = 1952 }", "years = { from = 1953 }")
    text = changed('place = "engine"\n', f'place = "engine"\n{add}', text)
    got, _ = problems(tmp_path, text, "format")
    assert not [p for p in got.problems if "no form" in str(p.what)]


@pytest.mark.parametrize(
    "change",
    [
        ("tell = \"square bowl\"\nyears = { from = 1952 }",
         "tell = \"round bowl\"\nyears = { from = 1952 }"),  # never in use together
        ('"square bowl"', '"round bowl"\norigin = "pattern part"\n#'),
    ],
)  # fmt: skip
def test_forms_of_other_years_or_origin_are_not_called_alike(tmp_path, change):
    got, _ = problems(tmp_path, changed(*change), "format")
    assert not [p for p in got.problems if "apart" in str(p.what)]


OUTSIDE = ["../x.png", "/etc/hosts", "a/../../x.png", "C:\\\\x.png", "link.png", "way/x.png", "."]


@pytest.mark.parametrize("name", OUTSIDE)
def test_a_picture_outside_the_folder_stops_the_profile(tmp_path, name):
    home = tmp_path / "home"
    home.mkdir()
    (tmp_path / "x.png").write_bytes(b"x")
    (home / "link.png").symlink_to(tmp_path / "x.png")
    (home / "way").symlink_to(tmp_path)
    got, found = problems(home, changed('tell = "round bowl"', f'picture = "{name}"'), "picture = ")
    assert got.profile is None
    assert any("outside the profile's folder" in str(p.what) and "folder" in str(p.mend) for p in found)


def test_a_picture_too_large_stops_and_one_inside_is_well(tmp_path):
    text = changed('tell = "round bowl"', 'tell = "round bowl"\npicture = "in/x.png"')
    text = changed("season_starts = 9", 'season_starts = 9\noutlines = { left = "left.svg" }', text)
    (tmp_path / "in").mkdir()
    (tmp_path / "left.svg").write_text("<svg/>")
    picture = tmp_path / "in" / "x.png"
    picture.write_bytes(b"x")
    assert problems(tmp_path, text, "picture")[0].problems == ()
    with picture.open("wb") as file:
        file.truncate(30_000_000)
    got, found = problems(tmp_path, text, "picture")
    assert got.profile is None
    assert "smaller" in str(found[0].mend)


def test_the_sample_itself_is_right(tmp_path):
    assert problems(tmp_path, GOOD, "format")[0].problems == ()
