"""A sharing copy holds the picture and nothing else, and what is covered in it cannot be had back."""

import hashlib
from dataclasses import dataclass
from io import BytesIO

import pytest
from PIL import Image, ImageChops, ImageDraw

from inspector.photo.masks import INK, MARGIN, Cover, covered, pixels
from inspector.photo.refusal import Refusal
from inspector.photo.sharing import sharing_copy
from tests.photo.pictures import MAKE, MODEL, SERIAL, camera_jpeg, camera_words, heic, plain, saved, shown

PLATE = Cover(0.25, 0.5, 0.55, 0.75)
# Markers of ITU-T T.81: tables, frame, scan; APP0 is JFIF. Nothing else may stand in a copy.
ALLOWED = {0xE0, 0xDB, 0xC0, 0xC4, 0xDA}


def segments(data):
    """The markers of a JPEG up to its scan, each with its content."""
    found, at = [], 2
    while at < len(data):
        marker, size = data[at + 1], int.from_bytes(data[at + 2 : at + 4], "big")
        found.append((marker, data[at + 4 : at + 2 + size]))
        if marker == 0xDA:
            return found
        at += 2 + size
    return found


def scene(words, size=(320, 240)):
    """A picture with something written in the part that is covered."""
    image = Image.new("RGB", size, (120, 140, 90))
    draw = ImageDraw.Draw(image)
    draw.ellipse((10, 10, 110, 100), fill=(200, 40, 30))
    left, top, right, bottom = pixels(PLATE, *size)
    draw.rectangle((left, top, right - 1, bottom - 1), fill=words)
    return image


@pytest.mark.parametrize(
    ("cover", "found"),
    [
        (Cover(0.25, 0.5, 0.5, 0.75), (25, 25, 50, 38)),
        (Cover(0.251, 0.501, 0.252, 0.502), (25, 25, 26, 26)),
        (Cover(0.0, 0.0, 1.0, 1.0), (0, 0, 100, 50)),
        (Cover(0.999, 0.999, 1.0, 1.0), (99, 49, 100, 50)),
    ],
)
def test_a_cover_takes_every_pixel_that_it_touches(cover, found):
    assert pixels(cover, 100, 50) == found


def test_a_margin_ends_at_the_edge_of_the_picture():
    assert pixels(Cover(0.1, 0.1, 0.9, 0.9), 100, 50, 18) == (0, 0, 100, 50)


def test_covered_pixels_are_plain_and_the_picture_given_stays():
    image = scene((255, 0, 255))
    made = covered(image, [PLATE], margin=0)
    part = made.crop(pixels(PLATE, *image.size))
    assert part.getcolors() == [(part.width * part.height, INK)]
    assert image.tobytes() == scene((255, 0, 255)).tobytes()
    outside = [(x, y) for x in range(0, 320, 7) for y in range(0, 110, 7)]
    assert all(made.getpixel(spot) == image.getpixel(spot) for spot in outside)


def test_two_pictures_that_differ_only_under_the_cover_have_the_very_same_copy():
    copies = {sharing_copy(saved(scene(words), "PNG"), [PLATE]) for words in ((255, 0, 255), (0, 0, 0), (9, 250, 9))}
    assert len(copies) == 1


@pytest.mark.parametrize("subsampling", [0, 1, 2])
def test_a_jpeg_tells_nothing_round_its_cover_either(subsampling):
    # Its blocks of up to 16 pixels, and the smoothing of colour, reach past the cover (ITU-T T.81).
    made = [saved(scene(w), "JPEG", quality=70, subsampling=subsampling) for w in ((255, 0, 255), (0, 0, 0))]
    bare = [sharing_copy(data, []) for data in made]
    assert bare[0] != bare[1]
    assert sharing_copy(made[0], [PLATE]) == sharing_copy(made[1], [PLATE])
    assert MARGIN >= 17


def test_made_smaller_it_is_covered_first():
    copies = {sharing_copy(saved(scene(words), "PNG"), [PLATE], px=50) for words in ((255, 0, 255), (0, 0, 0))}
    assert len(copies) == 1
    assert max(shown(copies.pop()).size) == 50


def test_covers_lie_on_the_picture_as_it_is_seen():
    image = Image.new("RGB", (320, 200), (230, 230, 230))
    copy = shown(sharing_copy(saved(image, "JPEG", exif=camera_words(6)), [Cover(0.0, 0.0, 0.2, 0.2)]))
    assert copy.size == (200, 320)
    assert max(copy.getpixel((10, 10))) < 70
    assert min(copy.getpixel((190, 10))) > 200
    assert min(copy.getpixel((10, 310))) > 200


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF", "HEIC"])
def test_nothing_that_the_camera_wrote_is_in_the_copy(kind):
    words = camera_words(6)
    xmp = b"<x:xmpmeta><exif:GPSLatitude>52,13N</exif:GPSLatitude></x:xmpmeta>"
    if kind == "HEIC":
        data = heic(plain(), exif=words.tobytes())
    elif kind == "JPEG":
        data = saved(plain(), kind, exif=words, comment="by nobody", xmp=xmp, icc_profile=b"")
    else:
        data = saved(plain(), kind, exif=words)
    before = hashlib.sha256(data).hexdigest()
    copy = sharing_copy(data)
    assert {marker for marker, _ in segments(copy)} <= ALLOWED
    assert dict(segments(copy))[0xE0].startswith(b"JFIF\0")
    assert dict(segments(copy))[0xE0][-2:] == b"\0\0"  # JFIF's own small picture is 0 by 0 (ITU-T T.871)
    for secret in (SERIAL, MAKE, MODEL, "2024:05:06", "+02:00", "GPS", "nobody"):
        assert secret.encode() not in copy
    assert hashlib.sha256(data).hexdigest() == before


def test_the_original_still_tells_what_the_copy_does_not():
    data = camera_jpeg(size=(64, 48))
    sharing_copy(data, [PLATE])
    exif = Image.open(BytesIO(data)).getexif()
    assert exif.get_ifd(0x8825)
    assert exif.get_ifd(0x8769)[0xA431] == SERIAL


@dataclass
class Mark:
    kind: str
    points: tuple
    text: str = ""


RING, WORDS = Mark("ring", ((0.4, 0.62), (0.48, 0.62))), Mark("words", ((0.3, 0.95),), "see here")


def test_marks_are_drawn_only_where_they_are_wished_and_tell_nothing_of_what_is_covered():
    bare = sharing_copy(saved(scene((255, 0, 255)), "PNG"), [PLATE])
    copies = {sharing_copy(saved(scene(w), "PNG"), [PLATE], marks=[RING, WORDS]) for w in ((255, 0, 255), (0, 0, 0))}
    assert len(copies) == 1
    marked = copies.pop()
    assert {marker for marker, _ in segments(marked)} <= ALLOWED
    differs = ImageChops.difference(*(shown(copy).convert("L") for copy in (bare, marked)))
    left, top, right, bottom = differs.point(lambda v: 255 * (v > 60)).getbbox()
    middle, far = (128, 149), 0.08 * 320
    assert left <= middle[0] - far + 3
    assert middle[1] - far - 6 < top < middle[1] - far + 6
    assert bottom > 0.9 * 240
    assert right < 200


def test_marks_lie_on_the_picture_as_it_is_seen_and_are_as_large_in_a_smaller_copy():
    data = saved(Image.new("RGB", (320, 200), (230, 230, 230)), "JPEG", exif=camera_words(6))
    arrow = Mark("arrow", ((0.1, 0.1), (0.5, 0.1)))
    for px in (320, 160):
        copy = shown(sharing_copy(data, marks=[arrow], px=px)).convert("L")
        left, _, right, bottom = copy.point(lambda v: 255 * (v < 120)).getbbox()
        assert abs(left - 0.1 * copy.width) < 5
        assert abs(right - 0.5 * copy.width) < 5
        assert bottom < 0.2 * copy.height


def test_the_time_is_told_only_where_it_is_wished():
    copy = sharing_copy(camera_jpeg(), taken="2026:05:09 10:11:12")
    exif = Image.open(BytesIO(copy)).getexif()
    assert dict(exif.get_ifd(0x8769)) == {0x9003: "2026:05:09 10:11:12"}
    assert not exif.get_ifd(0x8825)
    assert set(exif) <= {0x8769}


def test_what_cannot_be_read_is_one_sentence(tmp_path):
    (tmp_path / "list.jpg").write_text("a list of parts")
    found = sharing_copy(tmp_path / "list.jpg")
    assert isinstance(found, Refusal)
    assert str(found.why).startswith("list.jpg is not a photograph")
    assert isinstance(sharing_copy(tmp_path / "none.jpg"), Refusal)
    assert isinstance(sharing_copy(camera_jpeg()[:-40], name="short.jpg"), Refusal)


def test_a_very_large_jpeg_is_covered_at_half_its_size(monkeypatch):
    monkeypatch.setattr("inspector.photo.sharing.MOST_WHOLE", 10_000)
    made = [saved(scene(words), "JPEG", quality=90) for words in ((255, 0, 255), (0, 0, 0))]
    copies = [sharing_copy(data, [PLATE]) for data in made]
    assert shown(copies[0]).size == (160, 120)
    assert copies[0] == copies[1]
