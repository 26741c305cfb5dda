"""How long 40 photographs take to be kept, against the least that their bytes and pixels cost; and a list of 5,000."""

import hashlib
import os
import sys
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from io import BytesIO
from time import perf_counter

import numpy
import pytest
from PIL import Image
from PIL.JpegImagePlugin import JpegImageFile

from inspector.photo.copies import THUMBNAIL_PX
from inspector.photo.intake import Taken, arriving
from inspector.storage.photographs import Photographs
from inspector.storage.taking import Taking
from inspector.storage.thumbs import Thumbs

BENCH = os.environ.get("INSPECTOR_BENCH") == "1"
COUNT, SIZE = (40, (4000, 3000)) if BENCH else (6, (800, 600))
TIMES_FLOOR = 1.5
CORES = os.cpu_count() or 1


@cache
def drawn(n):
    """A picture with edges, slopes and the noise of a small sensor; invented."""
    rng = numpy.random.default_rng(n)
    wide, high = SIZE
    y, x = numpy.mgrid[0:high, 0:wide]
    base = 110 + 60 * numpy.sin(x / (37 + n)) * numpy.cos(y / 53) + 30 * ((x // 200 + y // 160) % 2)
    noise = rng.normal(0, 4, (high, wide))
    grey = numpy.clip(base + noise, 0, 255).astype(numpy.uint8)
    return Image.merge("RGB", [Image.fromarray(numpy.roll(grey, k * 9, 1)) for k in range(3)])


@pytest.fixture(scope="module")
def card(tmp_path_factory):
    """A card as a camera leaves it: JPEGs of 12 megapixels."""
    folder = tmp_path_factory.mktemp("card")
    for n in range(COUNT):
        exif = Image.Exif()
        exif[0x0112] = (1, 6, 8, 3)[n % 4]
        drawn(n % 4).save(folder / f"IMG_{n:04d}.jpg", "JPEG", quality=85 + n // 4 % 8, exif=exif, comment=str(n))
    return sorted(folder.iterdir())


def bare(source, folder):
    """Copied, hashed, flushed to the disk, and its pixels decoded at the scale of a thumbnail: nothing else."""
    data = source.read_bytes()
    digest = hashlib.sha256(data).hexdigest()
    with (folder / digest).open("wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())
    with JpegImageFile(BytesIO(data)) as image:
        image.draft(None, (THUMBNAIL_PX, THUMBNAIL_PX))
        image.load()


def floor_seconds(card, folder):
    folder.mkdir()
    begun = perf_counter()
    with ThreadPoolExecutor(CORES) as cores:
        list(cores.map(lambda source: bare(source, folder), card))
    return perf_counter() - begun


def intake_seconds(card, folder):
    photographs = Photographs(folder / "photographs")
    thumbs = Thumbs(folder / "thumbnails", photographs)
    begun = perf_counter()
    results = list(arriving(card, Taking(photographs, thumbs), px=THUMBNAIL_PX, threads=CORES))
    took = perf_counter() - begun
    assert all(isinstance(result, Taken) and not result.already for result in results)
    assert photographs.listing() == sorted(result.sha256 for result in results)
    assert len(list((folder / "thumbnails").glob("*.jpg"))) == len(card)
    return took


@pytest.mark.bench
def test_photographs_are_kept_within_one_and_a_half_times_the_floor(card, tmp_path, capsys):
    rounds = 3 if BENCH else 1
    floor, ours = [], []
    for n in range(rounds):
        floor.append(floor_seconds(card, tmp_path / f"floor {n}"))
        ours.append(intake_seconds(card, tmp_path / f"ours {n}"))
    ratio = min(ours) / min(floor)
    with capsys.disabled():
        sys.stdout.write(
            f"\n{len(card)} photographs of {SIZE[0] * SIZE[1] / 1e6:.0f} MP, {CORES} cores: {min(ours):.2f} s,"
            f" floor {min(floor):.2f} s, ratio {ratio:.2f}\n"
        )
    if BENCH:
        assert ratio <= TIMES_FLOOR
