"""A program killed at any moment loses nothing that it said was kept."""

import hashlib
import os
import random
import select
import signal
import subprocess
import sys
from time import monotonic

import pytest

from inspector.storage.library import Library
from inspector.storage.photographs import State
from tests.house.project import ROOT
from tests.record.steps import AT
from tests.storage.streamer import ID

STORES = 20
KILLS = 10  # a store
WAIT = 30.0  # seconds until a program that says nothing counts as stuck


class Streamer:
    """The other end of the pipe."""

    def __init__(self, process):
        self.process, self.rest = process, b""

    def told(self, until):
        """The lines that come before that moment."""
        lines = []
        while (left := until - monotonic()) > 0:
            ready, _, _ = select.select([self.process.stdout], [], [], left)
            if ready:
                data = os.read(self.process.stdout.fileno(), 1 << 16)
                assert data, "the program ended by itself"
                *whole, self.rest = (self.rest + data).split(b"\n")
                lines += [line.decode().split() for line in whole]
                break
        return lines

    def wait_for(self, word, lines):
        """The lines so far and those up to one that begins with the word."""
        stuck = monotonic() + WAIT
        while not any(line[0] == word for line in lines):
            assert monotonic() < stuck, f"no {word} in {lines[-3:]}"
            lines += self.told(stuck)
        return lines

    def killed(self, folder, number, chance):
        """What it said before it was killed at a random moment."""
        self.process.stdin.write(f"{folder} {number}\n".encode())
        self.process.stdin.flush()
        lines = self.wait_for("pid", [])
        pid = next(int(line[1]) for line in lines if line[0] == "pid")
        if chance.random() < 0.8:
            self.wait_for("edit", lines)
        moment = monotonic() + chance.uniform(0, 0.05)
        while monotonic() < moment:
            lines += self.told(moment)
        os.kill(pid, signal.SIGKILL)
        self.wait_for("gone", lines)
        assert ["gone", str(-signal.SIGKILL)] in lines, lines
        return lines


@pytest.fixture(scope="module")
def streamer():
    command = [sys.executable, "-m", "tests.storage.streamer"]
    with subprocess.Popen(command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE) as process:
        yield Streamer(process)
        process.stdin.close()
        process.wait(timeout=WAIT)


def keeps(library, lines):
    """Everything that was said is there, photographs with their bytes, and no row names a lost one."""
    said = {key for word, key, *_ in lines if word == "edit"}
    named = {(key, sha256) for word, key, *rest in lines if word == "photograph" for sha256 in rest}
    kept = {sha256 for word, sha256, *_ in lines if word == "kept"}
    if not library.machines():
        return not said
    record = library.load(ID).record
    assert said <= {s.id for s in record.statements if s.text == f"said {s.id}"}
    assert named <= {(p.id, p.sha256) for p in record.photographs}
    for sha256 in kept | {p.sha256 for p in record.photographs}:
        assert library.photographs.check(sha256) is State.OK
    return True


@pytest.mark.parametrize("store", range(STORES))
def test_everything_said_to_be_kept_is_there_after_each_of_ten_kills(streamer, tmp_path, store):
    chance = random.Random(store)
    (tmp_path / "profile").mkdir()
    (tmp_path / "profile" / "profile.toml").write_text('id = "tern-250"\n')
    said = []
    for kill in range(KILLS):
        said += streamer.killed(tmp_path, store * KILLS + kill, chance)
        with Library.open(tmp_path / "library", lambda: AT) as library:  # a quick check is part of opening
            assert keeps(library, said)
    assert len([line for line in said if line[0] == "edit"]) > KILLS
    assert hashlib.sha256(b"").hexdigest() not in {line[1] for line in said if line[0] == "kept"}
