"""Arrows, rings and words are drawn into a copy; what is given stays."""

from dataclasses import dataclass
from io import BytesIO

import numpy as np
from PIL import Image

from inspector.photo.marks import burned


@dataclass
class Mark:
    kind: str
    points: tuple
    text: str = ""


def blank(size=(400, 300)):
    buffer = BytesIO()
    Image.new("RGB", size, (130, 130, 130)).save(buffer, "JPEG")
    return buffer.getvalue()


def changed(data, made):
    one, other = (np.asarray(Image.open(BytesIO(d)).convert("L")).astype(int) for d in (data, made))
    return np.argwhere(np.abs(one - other) > 40)


def test_without_marks_the_copy_is_the_same_bytes():
    data = blank()
    assert burned(data, ()) is data


def test_an_arrow_lies_between_its_ends():
    data = blank()
    rows, columns = changed(data, burned(data, [Mark("arrow", ((0.25, 0.5), (0.75, 0.5)))])).T
    assert 95 < columns.min() < 105
    assert 295 < columns.max() < 306
    assert abs(rows.mean() - 150) < 3


def test_a_ring_is_open_in_its_middle():
    data = blank()
    spots = changed(data, burned(data, [Mark("ring", ((0.5, 0.5), (0.6, 0.5)))]))
    far = np.hypot(spots[:, 1] - 200, spots[:, 0] - 150)
    assert far.min() > 35
    assert far.max() < 48


def test_words_are_written_and_light_and_dark_show_them_on_any_ground():
    data = blank()
    made = np.asarray(Image.open(BytesIO(burned(data, [Mark("words", ((0.1, 0.5),), "figure 5")]))).convert("L"))
    assert made.min() < 60
    assert made.max() > 220


def test_a_mark_that_lacks_a_point_draws_nothing():
    data = blank()
    assert len(changed(data, burned(data, [Mark("arrow", ((0.5, 0.5),)), Mark("words", ((0.5, 0.5),))]))) == 0
