"""A program that dies by its own hand at the n-th thing that it does while it opens a library.

It waits for lines "FOLDER NOW MOMENT", makes a copy of itself for each, and tells how that one ended.
"""

import os
import signal
import sys
from pathlib import Path

from inspector.storage import database
from inspector.storage.library import Library

WRITES = ("os.remove", "os.rename", "os.chmod", "os.mkdir")


class Death:
    """Counts statements of SQL and changes of files; the one that is due is not lived to see."""

    def __init__(self, moment):
        self.left = moment

    def __call__(self, *_):
        self.left -= 1
        if not self.left:
            os.kill(os.getpid(), signal.SIGKILL)


def open_until(folder, now, moment):
    """The library is opened and closed, or the program is dead."""
    plain, death = database.open_to_write, Death(moment)

    def watched(file):
        db = plain(file)
        db.set_trace_callback(death)
        return db

    database.open_to_write = watched
    sys.addaudithook(lambda event, _: death() if event in WRITES else None)
    Library.open(folder, lambda: now).close()


def main():
    """One copy a line."""
    for line in sys.stdin:
        folder, now, moment = line.split()
        child = os.fork()
        if child == 0:
            open_until(Path(folder), now, int(moment))
            os._exit(0)
        _, status = os.waitpid(child, 0)
        os.write(1, f"{os.waitstatus_to_exitcode(status)}\n".encode())


if __name__ == "__main__":
    main()
