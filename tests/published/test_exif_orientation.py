"""Each of the eight orientations stands upright, in every kind of file that can carry one."""

import pytest
from PIL import Image, ImageOps

from inspector.photo.copies import print_copy, upright
from inspector.photo.probe import probe
from tests.photo.pictures import blocks, camera_words, chunk, heic, numbers, png, saved, shown

STORED = [[0, 1, 2], [3, 4, 5]]
# Where row 0 and column 0 of the stored pixels lie for each value of tag 274:
# CIPA DC-008 / JEITA CP-3451 (Exif), "Orientation"; worked out on six pixels.
UPRIGHT = {
    1: [[0, 1, 2], [3, 4, 5]],
    2: [[2, 1, 0], [5, 4, 3]],
    3: [[5, 4, 3], [2, 1, 0]],
    4: [[3, 4, 5], [0, 1, 2]],
    5: [[0, 3], [1, 4], [2, 5]],
    6: [[3, 0], [4, 1], [5, 2]],
    7: [[5, 2], [4, 1], [3, 0]],
    8: [[2, 5], [1, 4], [0, 3]],
}
RESERVED = (0, 9, 255)
KINDS = {
    "JPEG": {"quality": 95, "subsampling": 0},
    "PNG": {},
    "WEBP": {"lossless": True},
    "TIFF": {},
}


def six_pixels():
    image = Image.new("L", (3, 2))
    image.putdata([0, 1, 2, 3, 4, 5])
    return image


def rows(image):
    return [[image.getpixel((x, y)) for x in range(image.width)] for y in range(image.height)]


@pytest.mark.parametrize("orientation", UPRIGHT)
def test_six_pixels_are_turned_as_the_standard_tells(orientation):
    assert rows(upright(six_pixels(), orientation)) == UPRIGHT[orientation]


@pytest.mark.parametrize("orientation", UPRIGHT)
def test_the_imaging_library_turns_them_likewise(orientation):
    # Source: PIL.ImageOps.exif_transpose, which reads the same tag by code of its own.
    image = six_pixels()
    image.getexif()[274] = orientation
    assert rows(ImageOps.exif_transpose(image)) == rows(upright(six_pixels(), orientation))


@pytest.mark.parametrize("orientation", RESERVED)
def test_reserved_values_turn_nothing(orientation):
    data = saved(blocks(STORED), "JPEG", exif=camera_words(orientation), **KINDS["JPEG"])
    assert probe(data).camera.orientation == 1
    assert numbers(shown(print_copy(data))) == STORED


@pytest.mark.parametrize("orientation", UPRIGHT)
@pytest.mark.parametrize("kind", KINDS)
def test_a_copy_stands_upright_whatever_kind_of_file_it_is_from(kind, orientation):
    data = saved(blocks(STORED), kind, exif=camera_words(orientation), **KINDS[kind])
    picture = probe(data)
    assert (picture.width, picture.height) == (48, 32)
    assert picture.camera.orientation == orientation
    copy = shown(print_copy(data))
    assert numbers(copy) == UPRIGHT[orientation]
    assert copy.size == picture.upright


@pytest.mark.parametrize("orientation", UPRIGHT)
def test_a_heic_is_turned_once_by_its_decoder_and_not_again(orientation):
    data = heic(blocks(STORED), quality=95, chroma=444, exif=camera_words(orientation).tobytes())
    assert b"irot" in data or b"imir" in data or orientation == 1
    picture = probe(data)
    assert picture.camera.orientation == 1
    copy = shown(print_copy(data))
    assert numbers(copy) == UPRIGHT[orientation]
    assert copy.size == picture.upright


def test_an_orientation_written_behind_the_pixels_counts_too():
    pixels = b"".join(b"\0" + bytes(v for v in row for _ in range(3)) for row in STORED)
    exif = camera_words(6).tobytes().removeprefix(b"Exif\0\0")
    data = png(3, 2, pixels, last=chunk(b"eXIf", exif))
    assert data.index(b"IDAT") < data.index(b"eXIf")
    assert probe(data).upright == (2, 3)
    assert shown(print_copy(data)).size == (2, 3)
