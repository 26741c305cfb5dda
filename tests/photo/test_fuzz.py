"""Damaged pictures by the thousand: each has its answer soon, none ends the program, nothing false is kept."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
BENCH = os.environ.get("INSPECTOR_BENCH") == "1"
SEEDS = (20260509, 20260510)
EACH = 10_000 if BENCH else 750
SECONDS, MEMORY = 2.0, 1_000_000_000
WHOLE_SECONDS = 900  # a run that takes longer hangs
BEGIN = """
import sys, types
tests = types.ModuleType("tests")  # another package of that name may be installed
tests.__path__ = [sys.argv[1]]
sys.modules["tests"] = tests
from tests.photo.fuzzer import main
main(int(sys.argv[2]), int(sys.argv[3]))
"""


def taken_in(seed):
    """What came of the damaged pictures of this seed, in a process of its own."""
    command = [sys.executable, "-c", BEGIN, str(ROOT / "tests"), str(EACH), str(seed)]
    done = subprocess.run(
        command, cwd=ROOT, capture_output=True, text=True, timeout=WHOLE_SECONDS, check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[-2000:]
    return json.loads(done.stdout)


@pytest.mark.parametrize("seed", SEEDS)
def test_damaged_pictures_are_answered_in_time_and_memory_and_nothing_false_is_kept(seed):
    found = taken_in(seed)
    assert found["kept"] + found["refused"] == EACH
    assert found["kept"] > EACH // 20
    assert found["refused"] > EACH // 20
    assert found["wrong"] == []
    assert found["slowest"][0] < SECONDS, found["slowest"]
    assert found["memory"] < MEMORY
