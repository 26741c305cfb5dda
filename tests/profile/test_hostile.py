"""Files that no honest author writes: each gives a problem, none an error."""

import os
import tomllib

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspector.judgement.decode import Outcome, decode
from inspector.profile.read import LIMIT, MOST_TOLD, read_profile
from inspector.record.reading import figures_of
from tests.profile.samples import GOOD, changed

MANY = settings(
    max_examples=150,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
EVIL = ["[" * 5000, "{", '"""', "nan", "-inf", "9" * 5000, "0x" + "f" * 5000, "''", "true", "[[]]",
        "1979-05-27", "{a={a={}}}", "\x00", "[[a]]", "a.b.c=1", "\\", "# ", "\u2028", "[1, 'a']"]  # fmt: skip


def read(folder, raw):
    path = folder / "profile.toml"
    path.write_bytes(raw)
    return read_profile(path)


def only(got):
    assert got.profile is None
    (problem,) = got.problems
    assert problem.stops
    return problem


@MANY
@given(raw=st.binary(max_size=400))
def test_any_bytes_give_problems_and_never_an_error(tmp_path, raw):
    got = read(tmp_path, raw)
    assert got.profile is None
    assert got.problems


@MANY
@given(data=st.data())
def test_a_good_profile_damaged_anywhere_never_gives_an_error(tmp_path, data):
    text = GOOD
    for _ in range(data.draw(st.integers(1, 3))):
        start = data.draw(st.integers(0, len(text)))
        end = min(len(text), start + data.draw(st.integers(0, 12)))
        text = text[:start] + data.draw(st.sampled_from(EVIL) | st.text(max_size=5)) + text[end:]
    got = read(tmp_path, text.encode("utf-8", "replace"))
    assert got.profile is not None or any(p.stops for p in got.problems)
    assert all(str(p) and (p.line is None or p.line >= 1) for p in got.problems)


def values(data, where=()):
    """Every path in a table, with what stands there."""
    held = data.items() if isinstance(data, dict) else enumerate(data)
    for key, value in held:
        yield (*where, key)
        if isinstance(value, dict | list):
            yield from values(value, (*where, key))


WRONG = [True, -7, 1e300, "\u202e?", [], {}, [[]], {"x": {"y": 1}}, 10**30]
PATHS = sorted(values(tomllib.loads(GOOD)), key=str)


def toml(value):
    """The value as inline TOML."""
    if isinstance(value, dict):
        return "{" + ", ".join(f'"{k}" = {toml(v)}' for k, v in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(toml, value)) + "]"
    if isinstance(value, str):
        return f"'{value}'"
    return str(value).lower()


@pytest.mark.parametrize("wrong", WRONG, ids=range(len(WRONG)))
def test_a_wrong_kind_anywhere_never_gives_an_error(tmp_path, wrong):
    refused = 0
    for path in PATHS:
        data = tomllib.loads(GOOD)
        *outer, last = path
        inner = data
        for step in outer:
            inner = inner[step]
        inner[last] = wrong
        text = "\n".join(f'"{key}" = {toml(value)}' for key, value in data.items())
        got = read(tmp_path, text.encode())
        refused += got.profile is None
        stops = [p for p in got.problems if p.stops]
        assert (got.profile is None) == bool(stops)
        assert all(p.line for p in stops)
    assert refused > len(PATHS) // 2


def test_what_is_not_there_is_said(tmp_path):
    for path in (tmp_path / "none", tmp_path, tmp_path / "a\0b"):
        problem = only(read_profile(path))
        assert "profile.toml" in str(problem.mend)


def test_a_directory_in_place_of_the_file_is_said(tmp_path):
    (tmp_path / "profile.toml").mkdir()
    problem = only(read_profile(tmp_path))
    assert "not a file" in str(problem.what)
    assert "text file" in str(problem.mend)


def test_a_pipe_in_place_of_the_file_is_said_and_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "profile.toml")
    assert "not a file" in str(only(read_profile(tmp_path)).what)


def test_a_file_of_fifty_megabytes_is_not_read(tmp_path):
    path = tmp_path / "profile.toml"
    with path.open("wb") as file:
        file.truncate(50 * 1024 * 1024)
    got = read_profile(path)
    problem = only(got)
    assert str(LIMIT) in str(problem.what)
    assert "pictures" in str(problem.mend)
    assert got.text == got.sha256 == ""


def test_text_in_another_encoding_names_byte_and_line(tmp_path):
    raw = GOOD.encode().replace(b"Parts list", b"Parts l\xefst")
    problem = only(read(tmp_path, raw))
    assert str(raw.index(b"\xef")) in str(problem.what)
    assert problem.line == raw[: raw.index(b"\xef")].count(b"\n") + 1
    assert "UTF-8" in str(problem.mend)


@pytest.mark.parametrize(
    "text",
    [
        "a = " + "[" * 100_000,
        "a = " + "[" * 100 + "]" * 100,
        "a = " + "{a = " * 60 + "1" + "}" * 60,
        ".".join("a" * 1_000_000) + " = 1",
        "[" + ".".join("a" * 500) + "]",
        ".".join("a" * 50) + " = 1",
    ],
)
def test_hostile_nesting_is_refused(tmp_path, text):
    assert "nested too deep" in str(only(read(tmp_path, text.encode())).what)


@pytest.mark.parametrize("text", ["a" * 2_000_000, "a." * 30 + "=", '"' * 999_999, "x=" + "9" * 9999])
def test_long_nonsense_is_refused_as_no_toml(tmp_path, text):
    assert "not TOML" in str(only(read(tmp_path, text.encode())).what)


def form(n, more=""):
    return f'\n[[station.item.variant]]\nid = "v{n}"\nname = "same"\nyears = {{ from = 1950 }}\n{more}\n'


def test_the_first_five_hundred_problems_are_told_and_that_there_are_more(tmp_path):
    got = read(tmp_path, (GOOD + "".join(f"k{n} = 1\n" for n in range(700))).encode())
    assert got.profile is None
    assert len(got.problems) == MOST_TOLD + 1
    last = got.problems[-1]
    assert last.stops
    assert (str(MOST_TOLD) in str(last.what), "again" in str(last.mend)) == (True, True)


def test_each_of_very_many_forms_that_look_alike_is_told_once(tmp_path):
    got = read(tmp_path, (GOOD + "".join(form(n, 'sources = ["list"]') for n in range(300))).encode())
    assert got.profile is not None
    assert len([p for p in got.problems if "told apart" in str(p.what)]) == 299


def test_a_thousand_weak_facts_do_not_hide_what_stops_the_profile(tmp_path):
    many = "".join(form(n, f'tell = "{n}"') for n in range(1000))
    got = read(tmp_path, (GOOD + many + form("stop", 'sources = ["nobody"]')).encode())
    assert got.profile is None
    assert any(p.stops and '"nobody"' in str(p.what) for p in got.problems)
    assert len(got.problems) == MOST_TOLD + 1


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ('["letter", "count"],', "[" + '"letter", ' * 2000 + '"count"],', "outside what is allowed"),
        ('["letter", "count"],', '["count", "letter", "count"],', "more than once"),
        ("segment = [", "segment = [" + ",".join(f'{{ id = "s{n}", kind = "digits", optional = true }}'
                                                 for n in range(100)) + ",", "outside what is allowed"),
        ('places = ["frame", "engine"]\nkind = "same number"', 'places = ["frame", "engine"]\nkind = "close"\n'
         f"gap_points = [{', '.join(f'[{n}, 0]' for n in range(1000))}]", "outside what is allowed"),
        ('places = ["frame", "engine"]\nkind = "same number"', 'places = ["frame", "engine"]\nkind = "close"\n'
         f"gap_points = [[0, {10**400}], [3, 0]]", "outside what is allowed"),
    ],
    ids=["a long order", "a serial twice", "many stretches", "many gaps", "a huge gap"],
)  # fmt: skip
def test_a_rule_that_would_take_for_ever_is_refused(tmp_path, old, new, what):
    got = read(tmp_path, changed(old, new).encode())
    assert got.profile is None
    assert any(what in str(p.what) and p.stops for p in got.problems), got.problems


def test_a_chain_of_jobs_that_ends_is_well_and_a_long_ring_is_told_job_by_job(tmp_path):
    jobs = "".join(f'\n[[job]]\nid = "j{n}"\nname = "x"\nneeds = ["j{n + 1}"]\n' for n in range(300))
    assert read(tmp_path, (GOOD + jobs + '[[job]]\nid = "j300"\nname = "x"\n').encode()).problems == ()
    ring = read(tmp_path, (GOOD + jobs + '[[job]]\nid = "j300"\nname = "x"\nneeds = ["j7"]\n').encode())
    # The first seven only lead to the ring.
    assert len([p for p in ring.problems if "waits for itself" in str(p.what)]) == 294


def test_any_number_of_figures_is_answered_by_a_rule_of_many_open_stretches(tmp_path):
    names = [f"s{n}" for n in range(40)]
    text = changed("segment = [", "segment = [" + ",".join(
        f'{{ id = "{one}", kind = "digits", optional = true, max_width = 20 }}' for one in names) + ",")  # fmt: skip
    text = changed('["letter", "count"],', f'[{", ".join(map(repr, names))}, "letter", "count"],', text)
    profile = read(tmp_path, text.encode()).profile
    for typed in ("T0101", "123456789T0101", "1234567890123456789T", "?" * 30, "T" * 100):
        found = decode(profile, profile.place_by_id["frame"], figures_of(typed))
        assert (found.outcome is Outcome.DECODED) == (typed.endswith("T0101") or "?" in typed)
