"""How long a decode takes; the limits count only where INSPECTOR_BENCH=1."""

import os
import random
import sys
from statistics import median
from time import perf_counter

import pytest

from inspector.judgement.decode import decode
from inspector.profile.read import read_profile
from inspector.record.reading import figures_of
from inspector.resource import sample_profiles
from tests.judgement.test_decode_laws import blurred, numbers_like

MEDIAN_MS, UNREADABLE_MS = 5, 10
TIMES = 500


def took_ms(machine, place, figures):
    start = perf_counter()
    decode(machine, place, figures)
    return 1000 * (perf_counter() - start)


def tell(capsys, text):
    with capsys.disabled():
        sys.stdout.write(f"\n{text}\n")


@pytest.mark.bench
@pytest.mark.parametrize("name", ["brackwater-heron", "triumph-unit-650"])
def test_random_readings_with_up_to_six_doubtful_figures(name, capsys):
    machine = read_profile(sample_profiles() / name).profile
    places, rng = [place for place in machine.places if place.rules], random.Random(name)
    asked = [(place, figures_of(blurred(numbers_like(place, rng), rng) or "?"))
             for place in (rng.choice(places) for _ in range(TIMES))]  # fmt: skip
    each = [took_ms(machine, place, figures) for place, figures in asked]
    tell(capsys, f"{name}: decode median {median(each):.2f} ms, slowest {max(each):.1f} ms, {TIMES} readings")
    if os.environ.get("INSPECTOR_BENCH") == "1":
        assert median(each) < MEDIAN_MS


@pytest.mark.bench
@pytest.mark.parametrize(
    ("name", "place", "typed"),
    [("brackwater-heron", "frame", "6H?????"), ("brackwater-heron", "engine", "6HE?????"),
     ("triumph-unit-650", "frame", "DU?????"), ("triumph-unit-650", "engine", "T120 KC?????")],
)  # fmt: skip
def test_five_unreadable_figures_of_a_serial(name, place, typed, capsys):
    machine = read_profile(sample_profiles() / name).profile
    figures = figures_of(typed)
    fastest = min(took_ms(machine, machine.place_by_id[place], figures) for _ in range(25))
    tell(capsys, f"{typed}: {fastest:.2f} ms")
    assert decode(machine, machine.place_by_id[place], figures).serials > 1000
    if os.environ.get("INSPECTOR_BENCH") == "1":
        assert fastest < UNREADABLE_MS
