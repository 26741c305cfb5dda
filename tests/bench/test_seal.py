"""How much longer a sheet takes when it is sealed, and how long its check."""

import os
import sys
from time import perf_counter

import pytest

from inspector.sheet.checking import check_sheet
from inspector.sheet.pdf import as_pdf
from tests.sheet import made, sealing

PHOTOGRAPHS, TIMES = 40, 5
MOST_SEALING = 1.0  # seconds
LIMITS_COUNT = os.environ.get("INSPECTOR_BENCH") == "1"


@pytest.mark.bench
def test_sealing_a_sheet_of_forty_photographs_takes_at_most_a_second_more():
    record = made.record(PHOTOGRAPHS)
    pdf = as_pdf(made.sheet(record))
    sheet = sealing.seal(record, pdf=pdf)  # what is loaded once is loaded
    sealed, checked = [], []
    for _ in range(TIMES):
        begun = perf_counter()
        sheet = sealing.seal(record, pdf=pdf)
        between = perf_counter()
        assert check_sheet(sheet).as_sealed
        sealed.append(between - begun)
        checked.append(perf_counter() - between)
    sys.__stdout__.write(
        f"\n{len(pdf) / 1e6:.2f} MB: sealing {min(sealed):.2f} s and {(len(sheet) - len(pdf)) / 1e3:.0f} kB more,"
        f" check {min(checked):.2f} s\n"
    )
    if LIMITS_COUNT:
        assert min(sealed) <= MOST_SEALING
