"""How large a sheet with many photographs becomes, and how long it takes."""

import sys
from io import BytesIO
from time import perf_counter

import numpy as np
import pytest
from PIL import Image

from inspector.photo.copies import print_copy
from inspector.sheet.pdf import as_pdf
from tests.sheet import made, purse, read

PHOTOGRAPHS = 40
WIDE, HIGH = 4000, 3000
MOST_BYTES = 15_000_000


def photograph(seed):
    """A JPEG of 12 megapixels with as much detail as a camera gives: shapes of all sizes under sensor noise."""
    chance = np.random.default_rng(seed)
    picture = np.zeros((HIGH, WIDE, 3), np.float32)
    for step in (8, 32, 128, 512):
        coarse = chance.integers(0, 255, (HIGH // step + 1, WIDE // step + 1, 3), np.uint8)
        picture += np.asarray(Image.fromarray(coarse).resize((WIDE, HIGH), Image.Resampling.BILINEAR), np.float32)
    picture = picture / 4 + chance.normal(0, 6, picture.shape).astype(np.float32)
    buffer = BytesIO()
    Image.fromarray(picture.clip(0, 255).astype(np.uint8)).save(buffer, "JPEG", quality=90)
    return buffer.getvalue()


@pytest.mark.bench
def test_forty_photographs_of_twelve_megapixels_fit_into_fifteen_megabytes():
    originals = [photograph(seed) for seed in range(4)]
    begun = perf_counter()
    copies = [print_copy(originals[n % 4], quality=80) for n in range(PHOTOGRAPHS)]
    copied = perf_counter()
    record = made.record(PHOTOGRAPHS)
    # The end of a JPEG may carry padding, so that forty files from four are forty different pictures.
    store = {p.id: copies[n][:-2] + n.to_bytes(2, "big") + b"\xff\xd9" for n, p in enumerate(record.photographs)}
    data = as_pdf(made.sheet(record, pictures=store))
    drawn = perf_counter()
    sys.__stdout__.write(
        f"\n{PHOTOGRAPHS} photographs of {len(originals[0]) / 1e6:.1f} MB: copies {copied - begun:.1f} s,"
        f" sheet {drawn - copied:.2f} s, {len(data) / 1e6:.1f} MB, {len(read.pages(data))} pages\n"
    )
    assert len(read.images(data)) == PHOTOGRAPHS
    assert len(data) > sum(map(len, copies)) * 0.9
    assert len(data) <= MOST_BYTES


@pytest.mark.bench
def test_an_owners_file_with_forty_photographs_fits_into_fifteen_megabytes():
    copies = [print_copy(photograph(seed), quality=80) for seed in range(2)]
    record = purse.filled(made.record(PHOTOGRAPHS))
    store = {p.id: copies[n % 2][:-2] + n.to_bytes(2, "big") + b"\xff\xd9" for n, p in enumerate(record.photographs)}
    begun = perf_counter()
    sheet = purse.owner(record, pictures=store)
    composed = perf_counter()
    data = as_pdf(sheet)
    drawn = perf_counter()
    sys.__stdout__.write(
        f"\nowner's file with {PHOTOGRAPHS} photographs: composed in {composed - begun:.2f} s, drawn in"
        f" {drawn - composed:.2f} s, {len(data) / 1e6:.1f} MB, {len(read.pages(data))} pages\n"
    )
    assert len(read.images(data)) == PHOTOGRAPHS
    assert len(data) <= MOST_BYTES
