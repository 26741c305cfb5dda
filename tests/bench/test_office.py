"""The owner's file beside an office program that prints the same words and pictures: time, memory, size."""

import json
import os
import pickle
import re
import shutil
import subprocess
import sys
from io import BytesIO
from pathlib import Path
from statistics import median
from time import perf_counter
from typing import NamedTuple

import pytest
from PIL import Image

from inspector.photo.copies import PRINT_PX, QUALITY
from inspector.sheet.pdf import as_pdf
from inspector.sheet.text import as_text
from tests.bench.odt import as_odt
from tests.bench.test_pdf import HIGH, MOST_BYTES, PHOTOGRAPHS, WIDE, photograph
from tests.sheet import made, purse, read, sealing

BENCH = os.environ.get("INSPECTOR_BENCH") == "1"
TIMES = 3 if BENCH else 1
FASTER, SHARE_OF_MEMORY, MOST_SEALING = 8, 0.5, 1.0
HERE = Path(__file__).parent
OFFICE = shutil.which("soffice") or shutil.which("libreoffice")


class Run(NamedTuple):
    """A whole process: how long it took, and the most that it held."""

    seconds: float
    bytes: float


def print_copies():
    """So many different pictures as large as a print copy: windows on one photograph of 12 megapixels."""
    whole = Image.open(BytesIO(photograph(1)))
    for n in range(PHOTOGRAPHS):
        left, top = n % 8 * 100, n // 8 * 100
        part = whole.crop((left, top, left + WIDE - 800, top + HIGH - 600))
        part.thumbnail((PRINT_PX, PRINT_PX))
        buffer = BytesIO()
        part.save(buffer, "JPEG", quality=QUALITY)
        yield buffer.getvalue()


@pytest.fixture(scope="module")
def sheet():
    """The owner's file with its photographs, composed."""
    record = purse.filled(made.record(PHOTOGRAPHS))
    store = dict(zip((p.id for p in record.photographs), print_copies(), strict=True))
    return purse.owner(record, pictures=store)


def run(command):
    """A whole run of a program, started from a small one."""
    environment = {**os.environ, "PYTHONPATH": str(HERE.parents[1])}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)  # an installed program is compiled already
    told = subprocess.run([sys.executable, "-S", str(HERE / "measured.py"), *map(str, command)], check=True,
                          env=environment, stdout=subprocess.PIPE, timeout=300).stdout  # fmt: skip
    found = json.loads(told)
    assert found["code"] == 0
    return Run(found["seconds"], found["bytes"])


def medians(*commands):
    """The median of the runs of each, taken in turn after one that does not count; none disturbs one more than another.

    What a program writes once on its first run is written by the one that does not count.
    """
    rounds = [[run(command) for command in commands] for _ in range(TIMES + 1)][1:]
    return [Run(*map(median, zip(*runs, strict=True))) for runs in zip(*rounds, strict=True)]


def drawing(sheet, folder):
    """How we draw it, and where to."""
    composed, pdf = folder / "sheet.pickle", folder / "ours.pdf"
    composed.write_bytes(pickle.dumps(sheet))
    return (sys.executable, HERE / "drawing.py", composed, pdf), pdf


def converting(sheet, folder):
    """How the office program makes a PDF of the same content in its own way, and where to."""
    (folder / "sheet.odt").write_bytes(as_odt(sheet))
    command = (OFFICE, f"-env:UserInstallation={(folder / 'office').as_uri()}", "--headless", "--convert-to", "pdf",
               "--outdir", folder, folder / "sheet.odt")  # fmt: skip
    return command, folder / "sheet.pdf"


def words(text):
    """Every word and number."""
    return set(re.findall(r"\w+", re.sub(r"\((no grade|grade \d)\)", "", text)))  # drawn as strokes


def told(name, pdf, took):
    return (f"{name}: {took.seconds:.2f} s, {took.bytes / 1e6:.0f} MB held, {len(read.pages(pdf))} pages,"
            f" {len(pdf) / 1e6:.1f} MB\n")  # fmt: skip


@pytest.mark.bench
def test_an_owners_file_is_drawn_eight_times_as_fast_as_by_an_office_program_and_in_half_its_memory(sheet, tmp_path):
    ways = [drawing(sheet, tmp_path), *([converting(sheet, tmp_path)] if OFFICE else [])]
    took, *needed = medians(*(command for command, _ in ways))
    pdf, *other = (path.read_bytes() for _, path in ways)
    sys.__stdout__.write("\n" + told("owner's file, drawn by us", pdf, took))
    assert len(read.images(pdf)) == PHOTOGRAPHS
    assert words(as_text(sheet)) <= words(read.flat(pdf))
    assert b"ASCII85" not in pdf
    assert len(pdf) <= MOST_BYTES
    if not needed:
        sys.__stdout__.write("no office program (soffice) is here: nothing to compare with\n")
        return
    compare(sheet, took, needed[0], other[0])


def compare(sheet, took, needed, pdf):
    """The office program printed the same, and took so much more for it."""
    faster, share = needed.seconds / took.seconds, took.bytes / needed.bytes
    sys.__stdout__.write(told("the same content by the office program", pdf, needed))
    sys.__stdout__.write(f"{faster:.1f} times as fast, {share:.2f} of its memory\n")
    assert len({image._data for image in read.images(pdf)}) == PHOTOGRAPHS
    assert words(as_text(sheet)) <= words(read.flat(pdf))
    if BENCH:
        assert faster >= FASTER
        assert share <= SHARE_OF_MEMORY


@pytest.mark.bench
def test_sealing_an_owners_file_takes_at_most_a_second_more(sheet):
    pdf, record = as_pdf(sheet), made.record(PHOTOGRAPHS)
    sealing.seal(record)  # what is loaded once is loaded
    begun = perf_counter()
    sealed = sealing.seal(record, pdf=pdf)
    more = perf_counter() - begun
    sys.__stdout__.write(f"\nsealed in {more:.2f} s more, {len(sealed) / 1e6:.1f} MB\n")
    assert len(sealed) <= MOST_BYTES
    if BENCH:
        assert more <= MOST_SEALING
