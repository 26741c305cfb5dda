"""Thread tables and near twins.

Sources of the rows: studylib.net/doc/18133655 (BS 84), en.wikipedia.org/wiki/British_Standard_Fine,
tradeclassicbikes.co.uk page17 (BSF and cycle), monsterbolts.com/pages/us-tpi (UNC, UNF), classicfasteners.com.au with
studylib 18906762 (BA, pitch 0.9^n mm and diameter 6 p^1.2 mm, each to two significant figures), mlc.org.uk metric chart
(ISO 261), dummett.net (Whitworth hexagons). jrcengineering.com/technical-support/thread-pitch-and-screw-types names the
pairs that are taken for each other.
"""

from fractions import Fraction
from math import floor, log10

import pytest

from inspector.judgement.thread_tables import THREADS
from inspector.judgement.threads import from_tpi, identify

BY_NAME = {t.name: t for t in THREADS}


@pytest.mark.parametrize(
    ("name", "tpi"),
    [
        ("1/4 BSW", 20), ("1/2 BSW", 12), ("3/4 BSW", 10), ("1/4 BSF", 26), ("5/16 BSF", 22), ("3/8 BSF", 20),
        ("7/16 BSF", 18), ("9/16 BSF", 16), ("1/8 cycle", 40), ("3/16 cycle", 32), ("1/4 cycle", 26), ("1/2 cycle", 26),
        ("1/2 cycle 20 tpi", 20), ("1/4 UNC", 20), ("1/2 UNC", 13), ("1/4 UNF", 28), ("5/16 UNF", 24), ("1/2 UNF", 20),
        ("#10 UNF", 32), ("#10 UNC", 24), ("1 in UNF", 12),
    ],
)  # fmt: skip
def test_threads_to_the_inch(name, tpi):
    thread = BY_NAME[name]
    assert thread.tpi == tpi
    assert thread.pitch * tpi == Fraction("25.4")


def two_figures(x):
    places = 1 - floor(log10(x))
    return round(x, places)


@pytest.mark.parametrize("number", [0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 12])
def test_ba_follows_its_formula_to_two_figures(number):
    thread = BY_NAME[f"{number} BA"]
    pitch = 0.9**number
    assert float(thread.pitch) == pytest.approx(two_figures(pitch))
    assert float(thread.diameter) == pytest.approx(two_figures(6 * pitch**1.2))


@pytest.mark.parametrize(
    ("size", "pitch"),
    [("M3", "0.5"), ("M4", "0.7"), ("M5", "0.8"), ("M6", "1"), ("M8", "1.25"), ("M10", "1.5"), ("M12", "1.75"),
     ("M14", "2"), ("M18", "2.5"), ("M24", "3")],
)  # fmt: skip
def test_metric_coarse(size, pitch):
    assert BY_NAME[size].pitch == Fraction(pitch)


def test_errors_of_printed_tables_are_not_here():
    assert "1 in UNF" in BY_NAME
    assert BY_NAME["1 in UNF"].tpi == 12  # some charts print 1-14, which is another thread
    assert not any(t.size == "#0" for t in THREADS)
    assert not any(t.family == "cycle" and t.size == "1 in" for t in THREADS)


@pytest.mark.parametrize(
    ("name", "flats"),
    [("1/4 BSW", ".525"), ("3/8 BSF", ".600"), ("1/4 BSF", ".445"), ("1/4 cycle", ".445"), ("1/2 BSW", ".920")],
)
def test_whitworth_hexagons(name, flats):
    assert f"{flats} in across flats" in BY_NAME[name].spanner


def names(*args, **more):
    return {t.name for t in identify(*args, **more).threads}


def test_a_pitch_gauge_of_five_hundredths_cannot_split_cycle_from_metric():
    found = names(Fraction("6.0"), Fraction("1.0"), pitch_error=Fraction("0.05"))
    assert {"M6", "1/4 cycle", "1/4 BSF", "0 BA"} <= found


@pytest.mark.parametrize(
    ("a", "b"),
    [("1/4 cycle", "1/4 BSF"), ("2 BA", "M5"), ("2 BA", "#10 UNF"), ("1/4 cycle", "M6"), ("5/16 cycle", "M8 x 1")],
)
def test_near_twins_stay_together(a, b):
    first, second = BY_NAME[a], BY_NAME[b]
    middle = min(first.diameter, second.diameter) - Fraction("0.05")
    pitch = (first.pitch + second.pitch) / 2
    assert {a, b} <= names(middle, pitch, diameter_error=Fraction("0.1"), pitch_error=Fraction("0.05"))


def test_half_inch_whitworth_and_unc_part_when_counted_well():
    pitch, error = from_tpi(Fraction(12), Fraction(1, 3))
    found = names(Fraction("12.6"), pitch, pitch_error=error)
    assert "1/2 BSW" in found
    assert "1/2 UNC" not in found


@pytest.mark.parametrize("thread", THREADS, ids=lambda t: t.name)
def test_every_thread_is_found_from_its_own_figures(thread):
    assert thread.name in names(thread.diameter - Fraction("0.1"), thread.pitch, pitch_error=Fraction("0.01"))


def test_what_is_in_no_table_is_said_so():
    answer = identify(Fraction(30), Fraction(7), pitch_error=Fraction("0.1"))
    assert answer.threads == ()
    assert str(answer.sentence).startswith("No thread of the tables fits")


def test_no_count_is_no_pitch():
    with pytest.raises(ValueError, match="count more threads"):
        from_tpi(Fraction(0))
