"""A program that is killed while it works: it says of each edit and photograph when it is kept.

It waits for lines "FOLDER NUMBER" and makes a copy of itself for each, so that the start is paid once.
"""

import os
import random
import sys
from pathlib import Path

from inspector.record.claim import Statement
from inspector.record.edits import Part
from inspector.record.finding import Photograph
from inspector.record.verbs import add_photographs, put_entry
from inspector.session import Session
from inspector.storage import profiles, replaying
from inspector.storage.library import Library
from tests.record.steps import AT, blank

ID = "K3V7Q2M9"
LOADED = (profiles, replaying)  # once, and not by each copy, whose time is short


def say(*words):
    """The words are in the pipe, in one piece."""
    os.write(1, (" ".join(words) + "\n").encode())


def clock():
    return AT


def stream(folder, number):
    """Edits and photographs without end."""
    chance = random.Random(number)
    library = Library.open(folder / "library", clock)
    if not library.machines():
        library.create(blank(ID), folder / "profile")
    session = Session(library, ID, None, clock)
    count = 0
    while True:
        key = f"{number}-{count}"
        session.do(put_entry(Part.STATEMENTS, Statement(id=key, text=f"said {key}"), label="Said"))
        say("edit", key)
        if chance.random() < 0.4:
            data = chance.randbytes(chance.randrange(1, 30_000))
            sha256 = library.photographs.keep(data).sha256
            say("kept", sha256)
            taken = Photograph(id=key, sha256=sha256, name=key, media="image/jpeg", width=1, height=1, size=len(data))
            session.do(add_photographs((taken,)))
            say("photograph", key, sha256)
        count += 1


def main():
    """One copy a line; its end is told."""
    for line in sys.stdin:
        folder, number = line.split()
        child = os.fork()
        if child == 0:
            stream(Path(folder), int(number))
        say("pid", str(child))
        _, status = os.waitpid(child, 0)
        say("gone", str(os.waitstatus_to_exitcode(status)))


if __name__ == "__main__":
    main()
