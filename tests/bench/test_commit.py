"""How long a mark takes from the touch until it is on the disk, against a bare commit of the same size."""

import os
import sqlite3
import sys
from contextlib import closing
from statistics import median
from time import perf_counter

import pytest

from inspector.record.finding import Finding
from inspector.record.summary import summary
from inspector.record.verbs import mark
from inspector.record.words import Mark
from inspector.storage.formats import text_of
from inspector.storage.library import Library
from tests.record.steps import AT, blank
from tests.storage.shelf import Clock, opened, profile

ITEMS = 200
ROUNDS = 300
TIMES, MORE = 3, 2.0  # at most three bare commits and two milliseconds


def walked():
    """A record in which every item was looked at."""
    findings = tuple(Finding(item=f"item-{n}", by="inspector", at=AT, note="a note of the usual length" * 3)
                     for n in range(ITEMS))  # fmt: skip
    return blank().model_copy(update={"findings": findings})


def milliseconds(act, *given):
    start = perf_counter()
    act(*given)
    return (perf_counter() - start) * 1000


def measured(folder):
    """The milliseconds of a mark and of a bare commit, in turn, so that both meet the same disk."""
    clock, marks, bare = Clock(), [], []
    with Library.open(folder / "library", clock) as library, closing(sqlite3.connect(folder / "bare")) as db:
        db.isolation_level = None
        db.execute("PRAGMA journal_mode = WAL")
        db.execute("PRAGMA synchronous = FULL")
        db.execute("CREATE TABLE bare (x)")
        library.create(walked(), profile(folder))
        session = opened(library, clock)

        def touch(number):
            item, value = f"item-{number % ITEMS}", tuple(Mark)[(number // ITEMS + number) % 3]
            session.do(mark(session.record, item, "inspector", clock(), value))

        for number in range(ROUNDS):
            marks.append(milliseconds(touch, number))
            last = session._undo[-1]
            size = len(text_of(last.step)) + len(text_of(last.inverse)) + len(str(summary(session.record)))
            data = b"x" * size
            bare.append(milliseconds(db.execute, "INSERT INTO bare VALUES (?)", (data,)))
    return marks, bare


@pytest.mark.bench
def test_a_mark_is_on_the_disk_within_three_bare_commits_and_two_milliseconds(tmp_path, capsys):
    marks, bare = measured(tmp_path)
    at_most = TIMES * median(bare) + MORE
    with capsys.disabled():
        sys.stdout.write(
            f"\nmark on the disk: median {median(marks):.2f} ms, 95 % {sorted(marks)[int(ROUNDS * 0.95)]:.2f} ms;"
            f" bare commit: median {median(bare):.2f} ms; at most {at_most:.2f} ms\n"
        )
    assert len(marks) == len(bare) == ROUNDS
    if os.environ.get("INSPECTOR_BENCH") == "1":
        assert median(marks) <= at_most
