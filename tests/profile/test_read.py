"""A profile as it is read: whole, or with every problem at its line with its remedy."""

from hashlib import sha256

import pytest

from inspector.profile.problem import Problem
from inspector.profile.read import read_profile
from inspector.texts import say
from tests.profile.samples import GOOD, changed, line_of


def read(folder, text):
    (folder / "profile.toml").write_text(text, encoding="utf-8", newline="")
    return read_profile(folder)


def test_a_good_profile_comes_whole_and_without_problems(tmp_path):
    got = read(tmp_path, GOOD)
    assert got.problems == ()
    assert got.profile is not None
    assert got.profile.title == "Tern 250 single (invented)"
    assert got.text == GOOD
    assert got.sha256 == sha256(GOOD.encode()).hexdigest()
    assert got.folder == tmp_path


@pytest.mark.parametrize("end", ["\r\n", "\n"])
def test_folder_and_file_and_either_line_end_give_the_same(tmp_path, end):
    by_folder = read(tmp_path, "\ufeff" + GOOD.replace("\n", end))
    by_file = read_profile(tmp_path / "profile.toml")
    assert by_folder == by_file
    assert by_folder.profile == read(tmp_path, GOOD).profile


def test_a_problem_is_one_sentence_with_file_line_and_remedy():
    problem = Problem("profile.toml", 41, say("this is wrong."), say("mend it so."))
    assert str(problem) == "profile.toml line 41: this is wrong. Mend: mend it so."
    assert str(Problem("p", None, say("gone."), say("look."))) == "p: gone. Mend: look."


SLIPS = [
    ('swap_rte = 0.5\nassembly = "electrics"', 'assembly = "electrics"', "swap_rte", "swap_rate"),
    ('assembly = "electric"', 'assembly = "electrics"', '"electric"\n', "electrics"),
    ('season_starts = "9"', "season_starts = 9", "season_starts", "a whole number"),
    ("season_starts = 13", "season_starts = 9", "season_starts", "12 or less"),
    ("season_starts = true", "season_starts = 9", "season_starts", "a whole number"),
    ("invented = 1", "invented = true", "invented = 1", "true or false"),
    ("format = 2", "format = 1", "format", "1"),
    ("model_years = [1953, 1952]", "model_years = [1950, 1952]", "model_years", "correct"),
    ('maker = ""', 'maker = "Tern (invented)"', "maker", "at least 1"),
    ('id = "Left"', 'id = "left"', '"Left"', "small letters"),
    ("years = { from = 1951, to = 1950 }", "years = { from = 1950, to = 1951 }", "{ from", "holds"),
    ("years = 1950", "years = { from = 1950, to = 1951 }", "years = 1950", "a table"),
    ("parts = [10, 30, 20]", "parts = [10, 20, 30]", "parts = [10, 30", "correct"),
    ("value = nan", "value = 22.0", "value = nan", "kind"),
    ('{ code = "B", month = 13 }', '{ code = "B", month = 2 }', "month = 13", "12 or less"),
    ("from = -1", "from = 101", "from = -1", "0 or more"),
    ('outlines = { top2 = "a" }\n[[author]]', "[[author]]", "top2", "top"),
    ('item = "x"\n[[job]]', "[[job]]", 'item = "x"', "use one of"),
]


@pytest.mark.parametrize(("new", "old", "marker", "remedy"), SLIPS)
def test_a_slip_is_told_with_its_line_and_the_remedy(tmp_path, new, old, marker, remedy):
    text = changed(old, new)
    got = read(tmp_path, text)
    assert got.profile is None
    found = [p for p in got.problems if p.line == line_of(text, marker)]
    assert found, got.problems
    assert any(p.stops and remedy in str(p.mend) for p in found), found


def test_a_missing_key_points_at_the_table_that_lacks_it(tmp_path):
    text = changed('question = "Which lamp?"\n', "")
    (problem,) = read(tmp_path, text).problems
    assert problem.line == line_of(text, 'id = "lamp"') - 1
    assert 'item "lamp"' in str(problem.what)
    assert "question" in str(problem.mend)


def test_five_faults_of_different_kinds_are_told_at_once(tmp_path):
    text = changed('assembly = "electrics"', 'assembly = "electric"')
    text = changed("season_starts = 9", "saeson_starts = 9", text)
    text = changed('job = "strip"', 'job = "strap"', text)
    text = changed('needs = ["strip"]', 'needs = ["drain"]', text)
    text = changed('id = "late"', 'id = "early" #2', text)
    got = read(tmp_path, text)
    marks = ('"electric"\n', "saeson", '"strap"', 'needs = ["drain"]', "#2")
    assert [p.line for p in got.problems if p.stops] == sorted(line_of(text, mark) for mark in marks)
    assert [p.line for p in got.problems] == sorted(p.line for p in got.problems)


def test_a_slip_in_a_list_does_not_make_the_list_too_short(tmp_path):
    text = changed('id = "lamp"\nname', 'id = "lamp"\nnmae')
    got = read(tmp_path, text)
    assert {p.line for p in got.problems} == {line_of(text, "nmae"), line_of(text, "nmae") - 2}


def test_toml_that_breaks_names_the_line(tmp_path):
    text = changed('kind = "memory"', 'kind = "memory')
    (problem,) = read(tmp_path, text).problems
    assert problem.line == line_of(text, 'kind = "memory')
    assert problem.stops
    assert "quote" in str(problem.mend)


def test_a_profile_with_warnings_only_is_still_given(tmp_path):
    got = read(tmp_path, changed('sources = ["list"]\n[[station]]', "[[station]]"))
    assert got.profile is not None
    (problem,) = got.problems
    assert not problem.stops
    assert "no source" in str(problem.what)


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ("[points]", "[points]\nstep = 0.3", "steps of 0.3"),
        ("[points]", "[points]\nstep = 1e-30", "outside what is allowed"),
    ],
)
def test_a_scheme_whose_headings_cannot_be_counted_in_its_steps_is_refused(tmp_path, old, new, what):
    (tmp_path / "profile.toml").write_text(changed(old, new), encoding="utf-8")
    got = read_profile(tmp_path)
    assert got.profile is None
    assert any(what in str(problem.what) for problem in got.problems), got.problems
