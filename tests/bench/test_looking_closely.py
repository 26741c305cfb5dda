"""How long the bench takes to draw a picture of 12 megapixels while it is pulled and zoomed."""

import os
from statistics import median
from time import perf_counter

import numpy as np
import pytest
from PySide6.QtGui import QImage

from inspector.photo.working import smaller
from inspector.storage.library import Library
from inspector.window.bench.canvas import Canvas
from inspector.window.bench.copies import WorkingCopy
from inspector.window.bench.sight import Sight
from inspector.window.desk import Desk
from inspector.window.look.look import Look
from tests.storage.shelf import Clock

FRAME_MS, ROUNDS = 16.0, 30


@pytest.fixture
def canvas(qtbot, tmp_path):
    """Noise of 4000 by 3000 pixels, as large as the bench shows it."""
    with Library.open(tmp_path / "library", Clock()) as library:
        desk = Desk(library, Look("light", 1.0, 4.7), (), Clock())
        copy = WorkingCopy(desk)
        copy.show_pixels(smaller(np.random.default_rng(1).integers(0, 256, (3000, 4000, 3), dtype=np.uint8)))
        made = Canvas(desk, copy)
        qtbot.addWidget(made)
        made.resize(900, 680)
        yield made
        copy.close()


@pytest.mark.bench
@pytest.mark.parametrize("sight", [Sight(), Sight(1.7), Sight(5.0), Sight(1.7, turn=8.0), Sight(5.0, turn=8.0)])
def test_a_frame(canvas, sight, record_property):
    canvas.follow(sight)
    image = QImage(canvas.size(), QImage.Format.Format_ARGB32_Premultiplied)
    took = []
    for _ in range(ROUNDS):
        start = perf_counter()
        canvas.render(image)
        took.append((perf_counter() - start) * 1000)
    record_property("milliseconds", round(median(took), 2))
    assert not image.isNull()
    if os.environ.get("INSPECTOR_BENCH") == "1":
        assert median(took) < FRAME_MS
