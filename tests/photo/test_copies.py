"""A copy shows what the original shows, and carries nothing else."""

import subprocess
import sys
import warnings
from io import BytesIO

import pytest
from PIL import Image, ImageCms

from inspector.photo.copies import print_copy, thumbnail
from inspector.photo.refusal import Refusal
from tests.house.project import ROOT
from tests.photo.pictures import (
    SERIAL,
    camera_jpeg,
    camera_words,
    heic,
    plain,
    png,
    saved,
    shown,
    with_frame,
)

RED, WHITE = (200, 40, 30), (255, 255, 255)
NEAR = 4  # a JPEG does not keep values exactly


def near(found, wanted):
    return all(abs(a - b) <= NEAR for a, b in zip(found, wanted, strict=True))


def middle(data):
    image = shown(data)
    assert image.mode == "RGB"
    return image.getpixel((image.width // 2, image.height // 2))


@pytest.mark.parametrize(
    ("size", "px", "wanted"),
    [
        ((800, 600), 320, (320, 240)),
        ((600, 800), 320, (240, 320)),
        ((4000, 100), 320, (320, 8)),
        ((3000, 1), 320, (320, 1)),
        ((100, 80), 320, (100, 80)),  # nothing is made larger than it is
        ((2000, 1500), 1200, (1200, 900)),
    ],
)
def test_the_longer_side_is_at_most_what_was_asked(size, px, wanted):
    for kind in ("JPEG", "PNG"):
        assert shown(thumbnail(saved(plain(size), kind), px)).size == wanted


def test_a_print_copy_is_larger_than_a_thumbnail():
    data = saved(plain((1600, 1200)), "JPEG")
    assert shown(print_copy(data)).size == (1200, 900)
    assert shown(thumbnail(data)).size == (320, 240)


def test_quality_is_obeyed():
    noise = Image.effect_noise((400, 300), 80)
    data = saved(noise, "PNG")
    assert len(print_copy(data, quality=30)) < len(print_copy(data, quality=90)) / 2


def test_a_path_gives_the_same_copy_as_its_bytes(tmp_path):
    path = tmp_path / "front.jpg"
    path.write_bytes(camera_jpeg())
    assert thumbnail(path) == thumbnail(camera_jpeg())


def test_what_cannot_be_read_is_refused_by_name(tmp_path):
    for make in (thumbnail, print_copy):
        found = make(tmp_path / "gone.jpg")
        assert isinstance(found, Refusal)
        assert found.name == "gone.jpg"
        assert "side.png" in str(make(b"text", name="side.png").why)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF", "HEIF"])
def test_no_place_serial_or_comment_is_in_a_copy_and_the_original_keeps_them(kind):
    exif = camera_words()
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    if kind == "HEIF":
        data = heic(plain(), exif=exif.tobytes())
    elif kind == "TIFF":
        data = saved(plain(), kind, tiffinfo={0x8769: {0xA431: SERIAL}}, icc_profile=profile)
    else:
        extra = {"comment": "by nobody"} if kind == "JPEG" else {}
        data = saved(plain(), kind, exif=exif, icc_profile=profile, **extra)
    before = bytes(data)
    assert SERIAL.encode() in data
    for copy in (thumbnail(data), print_copy(data)):
        image = shown(copy)
        assert dict(image.getexif()) == {}
        assert set(image.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}
        assert not any(word in copy for word in (b"Exif", b"GPS", SERIAL.encode(), b"nobody"))
    assert data == before
    if kind != "TIFF":
        assert dict(_original(data).getexif().get_ifd(0x8825))[2] == (52.0, 13.0, 1.5)


def test_a_comment_is_not_in_a_copy():
    data = camera_jpeg()
    assert b"by nobody" in data
    assert b"nobody" not in thumbnail(data)
    assert "comment" not in shown(thumbnail(data)).info


def _original(data):
    import pillow_heif

    return pillow_heif.open_heif(data).to_pillow() if b"ftyp" in data[:12] else shown(data)


def test_a_heic_shows_what_it_was_made_from():
    halves = plain((96, 64))
    halves.paste((20, 60, 180), (0, 0, 48, 64))
    data = heic(halves, quality=95)
    copy = shown(print_copy(data))
    assert copy.size == (96, 64)
    assert near(copy.getpixel((12, 32)), (20, 60, 180))
    assert near(copy.getpixel((84, 32)), RED)


def test_a_small_picture_kept_inside_a_heic_never_stands_for_the_real_one(monkeypatch):
    from pillow_heif import HeifImageFile

    asked = []
    draft = HeifImageFile.draft
    monkeypatch.setattr(HeifImageFile, "draft", lambda self, *a: asked.append(draft(self, *a)) or asked[-1])
    assert near(middle(thumbnail(heic(plain((640, 480))), 64)), RED)
    assert [found for found in asked if found] == []


@pytest.mark.parametrize("mode", ["RGBA", "LA", "PA"])
def test_what_is_see_through_lies_on_white(mode):
    image = Image.new("RGBA", (64, 48), (0, 0, 0, 0))
    image.paste((200, 40, 30, 255), (0, 0, 32, 48))
    kind = "TIFF" if mode == "PA" else "PNG"
    data = saved(image.convert("RGBA" if mode == "PA" else mode), kind)
    copy = shown(print_copy(data))
    assert near(copy.getpixel((50, 24)), WHITE)
    assert copy.getpixel((10, 24))[0] < 210


def test_half_see_through_is_half_white():
    data = saved(Image.new("RGBA", (64, 48), (0, 0, 0, 128)), "WEBP", lossless=True)
    assert near(middle(print_copy(data)), (127, 127, 127))


@pytest.mark.parametrize("mode", ["P", "RGB", "L"])
def test_one_see_through_colour_lies_on_white(mode):
    image = plain() if mode != "P" else plain().quantize(4)
    image = image.convert(mode) if mode == "L" else image
    data = saved(image, "PNG", transparency=image.getpixel((0, 0)))
    assert near(middle(print_copy(data)), WHITE)


@pytest.mark.parametrize(
    ("kind", "mode"),
    [("JPEG", "CMYK"), ("TIFF", "CMYK"), ("TIFF", "YCbCr"), ("PNG", "P"), ("WEBP", "RGB")],
)
def test_every_way_of_keeping_colours_shows_the_same_colour(kind, mode):
    image = plain().quantize(4) if mode == "P" else plain().convert(mode)
    assert near(middle(print_copy(saved(image, kind))), RED)


def test_lab_and_one_bit_are_shown():
    grey = Image.new("LAB", (64, 48), (128, 128, 128))
    assert near(middle(print_copy(saved(grey, "TIFF"))), (119, 119, 119))  # L* = 50.2
    assert near(middle(print_copy(saved(Image.new("1", (64, 48), 1), "PNG"))), WHITE)


@pytest.mark.parametrize("value", [0, 128 * 257, 65535])
def test_sixteen_bits_are_brought_to_eight(value):
    wanted = (value // 257,) * 3
    for kind in ("PNG", "TIFF"):
        data = saved(Image.new("I;16", (64, 48), value), kind)
        assert near(middle(print_copy(data)), wanted)


def test_sixteen_bits_of_colour_are_brought_to_eight():
    row = b"\0" + b"\xc8\0\x28\0\x1e\0" * 64
    assert near(middle(print_copy(png(64, 48, row * 48, bits=16))), RED)


@pytest.mark.parametrize(("mode", "low", "high"), [("F", 0.0, 1.0), ("I", -1000, 200_000)])
def test_ranges_of_their_own_are_stretched(mode, low, high):
    image = Image.new(mode, (64, 48), low)
    image.paste(high, (32, 0, 64, 48))
    copy = shown(print_copy(saved(image, "TIFF")))
    assert near(copy.getpixel((8, 24)), (0, 0, 0))
    assert near(copy.getpixel((56, 24)), WHITE)


def test_a_picture_of_one_unending_value_is_shown():
    assert isinstance(print_copy(saved(Image.new("F", (64, 48), 5e9), "TIFF")), bytes)


def swapped_profile():
    """sRGB with the places of red and green changed over in its table of tags."""
    data = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    red, green = data.index(b"rXYZ"), data.index(b"gXYZ")
    places = bytes(data[red + 4 : red + 12]), bytes(data[green + 4 : green + 12])
    data[green + 4 : green + 12], data[red + 4 : red + 12] = places
    return bytes(data)


def test_colours_are_turned_to_srgb_by_the_pictures_own_profile():
    # In a profile whose red is the green of sRGB, pure red looks pure green.
    for kind in ("JPEG", "PNG"):
        data = saved(plain(colour=(255, 0, 0)), kind, icc_profile=swapped_profile())
        assert near(middle(print_copy(data)), (0, 255, 0))


def test_an_srgb_profile_changes_nothing():
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    assert near(middle(print_copy(saved(plain(), "JPEG", icc_profile=profile))), RED)


@pytest.mark.parametrize("profile", [b"no profile", swapped_profile()[:200]])
def test_a_damaged_profile_is_left_aside(profile):
    assert near(middle(print_copy(saved(plain(), "JPEG", icc_profile=profile))), RED)


def test_a_profile_of_other_colours_is_left_aside():
    grey = saved(plain().convert("L"), "JPEG", icc_profile=swapped_profile())
    assert len(set(middle(print_copy(grey)))) == 1


def test_large_pictures_warn_nobody():
    data = saved(Image.new("L", (9600, 9600), 90), "JPEG")  # 92 megapixels, above the warning
    with warnings.catch_warnings(record=True) as warned:
        warnings.simplefilter("always")
        assert near(middle(thumbnail(data)), (90, 90, 90))
    assert warned == []


BOUNDED = """
import resource, sys
from inspector.photo.copies import thumbnail
import PIL.Image, PIL.ImageCms
from pathlib import Path
room = int(Path("/proc/self/statm").read_text().split()[0]) * resource.getpagesize()
resource.setrlimit(resource.RLIMIT_AS, (room + {spare}, -1))
found = thumbnail(Path(sys.argv[1]))
print(type(found).__name__, getattr(found, "why", ""))
"""


def in_little_memory(path, spare):
    command = [sys.executable, "-c", BOUNDED.format(spare=spare), str(path)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    return done.stdout.strip()


def test_a_large_jpeg_is_made_small_in_little_memory(tmp_path):
    path = tmp_path / "front.jpg"
    path.write_bytes(saved(Image.new("RGB", (9000, 8000), RED), "JPEG"))  # 216 MB once decoded
    assert in_little_memory(path, spare=100_000_000) == "bytes"


def test_a_picture_for_which_there_is_no_memory_is_one_sentence(tmp_path):
    path = tmp_path / "front.png"
    path.write_bytes(png(9000, 8000, (b"\0" + b"\x50" * 9000) * 8000, colour=0))
    said = in_little_memory(path, spare=40_000_000)
    assert said.startswith("Refusal front.png needs more memory than this computer has free.")


def test_a_lying_header_takes_no_memory_at_all(tmp_path):
    path = tmp_path / "front.jpg"
    path.write_bytes(with_frame(camera_jpeg(), 60000, 60000))
    assert "60000 x 60000" in in_little_memory(path, spare=30_000_000)


def test_a_copy_is_a_whole_jpeg_file():
    copy = thumbnail(camera_jpeg())
    assert Image.open(BytesIO(copy)).format == "JPEG"
    assert copy[-2:] == b"\xff\xd9"
