"""A sheet of the invented machine, sealed once for all tests; and what other programs say of it."""

import subprocess
from functools import lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory

from inspector.record.versions import attached
from inspector.sheet.checking import reason_of
from inspector.sheet.keys import make_key
from inspector.sheet.pdf import as_pdf
from inspector.sheet.seal import sealed
from tests.sheet import made

AT = made.MADE_AT


def key(number=1):
    """The seal key of a computer; another number is another computer."""
    return _key(number)


@lru_cache
def _key(number):
    with TemporaryDirectory() as folder:
        return make_key(Path(folder), AT)


@lru_cache
def plain():
    """The sheet before it is sealed, with two photographs."""
    return as_pdf(made.sheet(made.record(2)))


def seal(record=None, by=1, pdf=None):
    """The sheet sealed by the key of that computer."""
    record = record or made.record(2)
    return sealed(pdf or plain(), attached(record), key(by), AT, reason_of(record.id, 1))


@lru_cache
def sheet():
    """The sealed sheet."""
    return seal()


def pdfsig(tmp_path, data):
    """What pdfsig of poppler says; its exit code does not tell a changed file from a sound one."""
    file = tmp_path / "sheet.pdf"
    file.write_bytes(data)
    return subprocess.run(["pdfsig", "-nocert", str(file)], capture_output=True, text=True, check=False).stdout
