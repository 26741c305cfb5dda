"""A small library to put records into, with a clock that goes on by a second each time it is read."""

from contextlib import closing
from datetime import UTC, datetime, timedelta

from inspector.record.claim import Statement
from inspector.record.edits import Part
from inspector.record.verbs import put_entry
from inspector.session import Session
from inspector.storage import database
from inspector.storage.library import Library
from tests.record.steps import blank

ID = "K3V7Q2M9"


class Clock:
    """Ten o'clock on the first of March 2026, and a second later each time."""

    def __init__(self):
        self.now = datetime(2026, 3, 1, 10, tzinfo=UTC)

    def __call__(self):
        self.now += timedelta(seconds=1)
        return self.now.isoformat()


def profile(folder):
    """A folder that stands for a profile: one text, one picture, one hidden file."""
    home = folder / "tern"
    home.mkdir(exist_ok=True)
    (home / "profile.toml").write_text('id = "tern-250"\n')
    (home / "tank.svg").write_text("<svg/>")
    (home / ".swap").write_text("not part of it")
    return home


def filled(folder, clock, *ids, edits=3):
    """A closed library with these records, each said something about."""
    with Library.open(folder / "library", clock) as library:
        for record_id in ids or (ID,):
            library.create(blank(record_id), profile(folder))
            session = opened(library, clock, record_id)
            for number in range(edits):
                session.do(said(str(number)))
    return folder / "library"


def opened(library, clock, record_id=ID):
    """The record in a session; no profile is needed to keep it."""
    return Session(library, record_id, None, clock)


def said(key, text="", joins=""):
    """The step that puts a statement."""
    return put_entry(Part.STATEMENTS, Statement(id=key, text=text or key), label=f"Said {key}", joins=joins)


def sql(folder, *statements):
    """The statements done behind the program's back."""
    with closing(database.open_to_write(folder / database.NAME)) as db:
        for statement in statements:
            db.execute(statement)


def spoil(path):
    """All but the first page of the database file overwritten."""
    path.chmod(0o644)
    data = path.read_bytes()
    path.write_bytes(data[:4096] + b"\x5a" * (len(data) - 4096))
