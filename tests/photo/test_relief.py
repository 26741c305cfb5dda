"""What the tools for reading a stamping do to a working copy, and that they leave what they are given alone."""

import hashlib

import numpy as np
import pytest
from skimage import color

from inspector.photo.copies import upright
from inspector.photo.refusal import Refusal
from inspector.photo.relief import Tools, grey, inverted, local_contrast, relief, worked
from inspector.photo.working import pixels, smaller
from tests.photo.pictures import blocks, camera_jpeg, camera_words, heic, plain, saved


@pytest.fixture
def ramp():
    """Grey that rises to the right, with a darker left half."""
    across = np.linspace(90, 130, 240)
    return np.repeat(np.round(across).astype(np.uint8)[None, :], 160, axis=0)


def colours():
    return np.random.default_rng(4).integers(0, 256, (120, 160, 3), dtype=np.uint8)


def test_no_tool_shows_the_picture_as_it_was_taken():
    picture = colours()
    assert worked(picture, Tools()) is picture


@pytest.mark.parametrize(
    "tools",
    [Tools(grey=True), Tools(contrast=True), Tools(relief=40.0), Tools(invert=True), Tools(True, True, 90.0, True)],
)
def test_every_tool_leaves_what_it_is_given(tools):
    picture = colours()
    before = hashlib.sha256(picture.tobytes()).hexdigest()
    made = worked(picture, tools)
    assert made is not picture
    assert not np.shares_memory(made, picture)
    assert hashlib.sha256(picture.tobytes()).hexdigest() == before
    assert made.shape[:2] == picture.shape[:2]


def test_grey_is_the_luma_of_bt_601():
    """Weights 0.299, 0.587, 0.114 (ITU-R BT.601-7, 2.5.1)."""
    picture = colours()
    assert np.abs(grey(picture) - picture @ np.array([0.299, 0.587, 0.114])).max() <= 1


def test_local_contrast_widens_what_is_narrow():
    """A worn figure, six grey steps darker, on a pad that the lamp lights unevenly."""
    pad = np.repeat(np.linspace(60, 200, 240)[None, :], 240, axis=0) + np.random.default_rng(1).normal(0, 2, (240, 240))
    worn = pad.copy()
    worn[100:140, 110:130] -= 6
    before, after = (np.round(x).clip(0, 255).astype(np.uint8) for x in (pad, worn))
    shown = local_contrast(before).astype(float) - local_contrast(after)
    assert shown[105:135, 114:126].mean() > 9


def test_local_contrast_in_colour_keeps_the_hue():
    picture = np.zeros((128, 128, 3), np.uint8)
    picture[:] = (120, 70, 40)
    picture[40:80, 40:80] = (132, 77, 44)
    before, after = color.rgb2lab(picture), color.rgb2lab(local_contrast(picture))
    assert np.abs(after[..., 1:] - before[..., 1:]).max() < 6


def test_relief_is_light_where_grey_rises_towards_the_light(ramp):
    middle = (slice(20, -20), slice(20, -20))
    assert relief(ramp, 0)[middle].mean() > 150
    assert relief(ramp, 180)[middle].mean() < 106
    assert relief(ramp, 90)[middle].mean() == pytest.approx(128, abs=1)
    assert relief(ramp.T, 90).mean() < 128 < relief(ramp.T, 270).mean()


def test_half_a_turn_gives_the_negative():
    picture = grey(colours())
    both = relief(picture, 30).astype(int) + relief(picture, 210)
    assert np.abs(both - 256)[(both > 250) & (both < 262)].max() <= 1


def test_inverted_twice_is_as_before():
    picture = colours()
    assert (inverted(inverted(picture)) == picture).all()


def test_a_groove_shows_light_on_one_side_and_dark_on_the_other():
    plate = np.full((100, 100), 128, np.uint8)
    plate[:, 48:52] = 110
    lit = relief(plate, 0)[50].astype(int)
    assert lit[44:56].max() > 190
    assert lit[44:56].min() < 70


def test_pixels_are_upright_and_whole():
    assert pixels(camera_jpeg((64, 48), orientation=6)).shape == (64, 48, 3)


@pytest.mark.parametrize("orientation", range(1, 9))
def test_pixels_stand_as_a_person_sees_them(orientation):
    """The upper left pixel of the upright picture is the light one, however it was stored (CIPA DC-008, tag 274)."""
    stored = {1: 1, 2: 2, 3: 3, 4: 4, 5: 5, 6: 8, 7: 7, 8: 6}[orientation]
    standing = blocks([[5, 1, 1], [1, 1, 1]])
    laid = upright(standing, stored)
    found = pixels(saved(laid, "JPEG", quality=95, exif=camera_words(orientation)))
    assert found.shape == (*standing.size[::-1], 3)
    assert found[8, 8, 0] > found[8, 40, 0] + 100


def test_pixels_of_a_heic():
    assert pixels(heic(plain((64, 48)))).shape == (48, 64, 3)


def test_what_is_no_picture_is_refused_in_words():
    assert isinstance(pixels(b"no picture", "pad.jpg"), Refusal)


def test_smaller_copies_halve_down_to_a_screenful():
    levels = smaller(np.zeros((3000, 4000, 3), np.uint8))
    assert [level.shape[:2] for level in levels] == [(3000, 4000), (1500, 2000), (750, 1000)]
