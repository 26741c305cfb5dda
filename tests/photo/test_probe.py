"""A file is what its content says, and a refusal is one sentence that names it."""

import os
import stat
import warnings
from datetime import datetime
from pathlib import Path

import pytest
from PIL import Image, TiffImagePlugin

from inspector.photo.kinds import Kind
from inspector.photo.probe import Picture, probe
from inspector.photo.read import MOST_BYTES
from inspector.photo.refusal import Refusal
from inspector.texts import Say, tr
from tests.photo.pictures import (
    MODEL,
    camera_jpeg,
    camera_words,
    heic,
    plain,
    png,
    saved,
    with_frame,
)


def made():
    return {
        Kind.JPEG: camera_jpeg(),
        Kind.PNG: saved(plain(), "PNG"),
        Kind.WEBP: saved(plain(), "WEBP"),
        Kind.HEIC: heic(plain()),
        Kind.TIFF: saved(plain(), "TIFF"),
    }


def why(found):
    assert isinstance(found, Refusal), found
    assert isinstance(found.why, Say)
    return tr(found.why)


@pytest.mark.parametrize("kind", Kind)
def test_every_kind_is_known_by_its_content_with_its_size(kind):
    data = made()[kind]
    found = probe(data, f"photo.{kind.value.lower()}")
    assert isinstance(found, Picture)
    assert (found.kind, found.width, found.height) == (kind, 64, 48)
    assert found.size == len(data)
    assert found.notes == ()
    # Source: media types registered with IANA under image/.
    assert kind.media in {"image/jpeg", "image/png", "image/webp", "image/heic", "image/tiff"}


@pytest.mark.parametrize("kind", Kind)
def test_a_wrong_ending_is_taken_with_a_note(kind):
    wrong = "photo.png" if kind is not Kind.PNG else "photo.JPG"
    found = probe(made()[kind], wrong)
    assert [tr(note) for note in found.notes] == [f"{wrong} is a {kind.value} picture, whatever its ending says."]


def test_a_path_and_its_bytes_are_the_same_picture(tmp_path):
    path = tmp_path / "front.jpg"
    path.write_bytes(camera_jpeg())
    assert probe(path) == probe(camera_jpeg(), "front.jpg")


def test_what_the_camera_wrote_is_read():
    camera = probe(camera_jpeg(orientation=6)).camera
    assert camera.orientation == 6
    assert camera.taken_at == datetime.fromisoformat("2024-05-06T10:11:12")
    assert camera.taken_at.tzinfo is None
    assert camera.offset == "+02:00"
    assert camera.words == MODEL  # the model's name begins with the maker's already
    assert camera.has_place


def test_a_picture_without_tags_claims_nothing():
    camera = probe(saved(plain(), "JPEG")).camera
    assert (camera.orientation, camera.taken_at, camera.offset) == (1, None, "")
    assert (camera.words, camera.has_place, camera.readable) == ("", False, True)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_tags_are_read_from_every_kind(kind):
    camera = probe(saved(plain(), kind, exif=camera_words())).camera
    assert (camera.offset, camera.words, camera.has_place) == ("+02:00", MODEL, True)


def test_tags_of_a_heic_are_read():
    camera = probe(heic(plain(), exif=camera_words().tobytes())).camera
    assert (camera.offset, camera.words, camera.has_place) == ("+02:00", MODEL, True)


def test_tags_of_a_tiff_are_read():
    tags = TiffImagePlugin.ImageFileDirectory_v2()
    tags[0x0110] = MODEL
    tags[0x8769] = {0x9003: "2024:05:06 10:11:12", 0x9011: "+02:00"}
    tags[0x8825] = {2: (52.0, 13.0, 1.5)}
    camera = probe(saved(plain(), "TIFF", tiffinfo=tags)).camera
    assert (camera.offset, camera.words, camera.has_place) == ("+02:00", MODEL, True)


@pytest.mark.parametrize("taken", ["0000:00:00 00:00:00", "    :  :     :  :  ", "soon", ""])
def test_a_clock_that_was_never_set_gives_no_time(taken):
    assert probe(camera_jpeg(taken=taken)).camera.taken_at is None


@pytest.mark.parametrize("offset", ["Z", "2", "", "+2:00"])
def test_an_offset_that_is_none_is_left_out(offset):
    assert probe(camera_jpeg(offset=offset)).camera.offset == ""


def test_the_time_of_digitizing_stands_in_for_a_missing_time_of_taking():
    exif = Image.Exif()
    exif.get_ifd(0x8769)[0x9004] = "1999:12:31 23:59:58"
    camera = probe(saved(plain(), "JPEG", exif=exif)).camera
    assert camera.taken_at == datetime.fromisoformat("1999-12-31T23:59:58")


def test_the_time_a_file_was_last_changed_is_not_when_it_was_taken():
    exif = Image.Exif()
    exif[0x0132] = "1999:12:31 23:59:58"
    assert probe(saved(plain(), "JPEG", exif=exif)).camera.taken_at is None


def test_a_place_is_seen_in_the_other_packet_too():
    packet = b'<x:xmpmeta exif:GPSLatitude="52,13.0N"/>'
    assert probe(saved(plain(), "JPEG", xmp=packet)).camera.has_place
    assert not probe(saved(plain(), "JPEG", xmp=packet.replace(b"GPS", b"ABC"))).camera.has_place


def test_control_signs_in_the_cameras_name_are_dropped():
    exif = Image.Exif()
    exif[0x010F], exif[0x0110] = "Nocam\0\n", "\x1b[31mTwo" + "x" * 200
    words = probe(saved(plain(), "JPEG", exif=exif)).camera.words
    assert words.startswith("Nocam [31mTwo")
    assert words.isprintable()
    assert len(words) == 80


def test_damaged_tags_are_a_note_and_no_refusal():
    whole = camera_jpeg()
    at = whole.index(b"Exif\0\0") + 6
    damaged = whole[:at] + b"XXXXXXXX" + whole[at + 8 :]
    found = probe(damaged, "front.jpg")
    assert isinstance(found, Picture)
    assert [tr(n) for n in found.notes] == ["What the camera wrote into front.jpg cannot be read."]


def test_several_pictures_in_one_file_are_a_note():
    data = saved(plain(), "TIFF", save_all=True, append_images=[plain()])
    assert [tr(n) for n in probe(data, "title.tif").notes] == [
        "title.tif holds several pictures; only the first one is shown."
    ]


@pytest.mark.parametrize(
    ("data", "holds"),
    [
        (b"a list of parts\n", "text"),
        ("zażółć".encode() * 999, "text"),
        ("zażółć".encode("utf-16"), "text"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "text"),
        (b"%PDF-1.7\n", "a PDF document"),
        (b"GIF89a", "a GIF picture"),
        (b"PK\x03\x04", "a packed archive or an office document"),
        (b"\0\0\0\x18ftypmp42\0\0\0\0isommp42", "a film"),
        (b"\0\0\0\x1cftypavif\0\0\0\0avifmif1miaf", "an AVIF picture"),
        (b"\0\0\0\x1cftypmif1\0\0\0\0avifmif1miaf", "an AVIF picture"),
        (b"\0\0\0\x18ftypcrx \0\0\0\x01crx isom", "a camera's raw data"),
        (b"II*\0\x10\0\0\0CR\x02\0", "a camera's raw data"),
        (b"RIFF\x24\0\0\0AVI LIST", "a film or sound"),
        (b"\xff\xd8", "data of an unknown kind"),
        (b"\x89PNG", "data of an unknown kind"),
        (bytes(range(256)), "data of an unknown kind"),
    ],
)
def test_what_is_no_photograph_is_named_for_what_it_is(data, holds):
    assert why(probe(data, "front.jpg")) == (
        f"front.jpg is not a photograph the program can read (it holds {holds})."
        " Choose a JPEG, PNG, WebP, HEIC or TIFF file."
    )


def test_raw_data_that_look_like_a_tiff_are_told_by_their_ending():
    assert "raw data" in why(probe(saved(plain(), "TIFF"), "DSC1.NEF"))


def test_no_bytes_are_no_photograph(tmp_path):
    path = tmp_path / "front.jpg"
    path.touch()
    assert why(probe(path)).startswith("front.jpg is empty.")
    assert why(probe(b"")).startswith("photograph is empty.")


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("a.png", png(60000, 60000, b"\0" * 999)),
        ("a.jpg", with_frame(camera_jpeg(), 60000, 60000)),
        ("a.webp", b"RIFF\x16\0\0\0WEBPVP8X\x0a\0\0\0\0\0\0\0" + b"\x0f\x27\0" + b"\x0f\x27\0"),
    ],
)
def test_a_header_that_claims_too_much_is_refused_before_anything_is_decoded(name, data):
    said = why(probe(data, name))
    side = 10000 if name == "a.webp" else 60000
    assert said.startswith(f"{name} says it is {side} x {side} pixels; a ")
    assert "million pixels can be opened" in said


@pytest.mark.parametrize(("side", "said"), [(12000, "a.heic says it is 12000 x 12000"), (60000, "a.heic ")])
def test_a_heic_that_claims_too_much_is_refused(side, said):
    whole, extents = heic(plain((64, 64))), b"ispe\0\0\0\0"
    size = extents + (64).to_bytes(4, "big") * 2
    assert size in whole
    lying = whole.replace(size, extents + (side).to_bytes(4, "big") * 2)
    assert said in why(probe(lying, "a.heic"))


def test_a_tiff_that_claims_too_much_is_refused():
    whole = saved(plain((641, 483)), "TIFF")
    data = whole.replace((641).to_bytes(4, "little"), (60000).to_bytes(4, "little"))
    data = data.replace((483).to_bytes(4, "little"), (60000).to_bytes(4, "little"))
    assert "60000 x 60000" in why(probe(data, "a.tif"))


@pytest.mark.parametrize(("pixels", "taken"), [(200_000_000, True), (200_020_000, False)])
def test_the_limit_on_pixels_is_exact_for_a_jpeg(pixels, taken):
    data = with_frame(saved(plain(), "JPEG"), 20_000, pixels // 20_000)
    assert isinstance(probe(data), Picture) is taken


def test_a_progressive_jpeg_has_a_lower_limit():
    data = saved(plain(), "JPEG", progressive=True)
    at = data.index(b"\xff\xc2") + 5
    large = data[:at] + (13000).to_bytes(2, "big") * 2 + data[at + 4 :]
    assert "up to 160 million" in why(probe(large))


def test_a_size_of_nothing_is_damage():
    assert "is damaged" in why(probe(with_frame(camera_jpeg(), 64, 0), "front.jpg"))


def test_more_bytes_than_the_limit_are_refused(tmp_path):
    path = tmp_path / "front.jpg"
    with path.open("wb") as file:
        file.write(camera_jpeg())
        file.truncate(MOST_BYTES + 1)
    assert why(probe(path)).startswith("front.jpg is larger than 80 MB.")
    with path.open("r+b") as file:
        file.truncate(MOST_BYTES)
    assert isinstance(probe(path), Picture)


def test_folders_and_what_is_not_there_are_refused(tmp_path):
    assert "is a folder" in why(probe(tmp_path))
    assert why(probe(tmp_path / "gone.jpg")).startswith("gone.jpg is not there any more.")
    (tmp_path / "front.jpg").touch()
    assert "in.jpg" in why(probe(tmp_path / "front.jpg" / "in.jpg"))
    assert "is not there" in why(probe(Path("a\0b.jpg")))


def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "front.jpg")
    assert "is not a file" in why(probe(tmp_path / "front.jpg"))
    assert stat.S_ISFIFO((tmp_path / "front.jpg").stat().st_mode)


@pytest.mark.parametrize(
    ("error", "part"),
    [
        (PermissionError(13, "Permission denied"), "front.jpg may not be read by you."),
        (OSError(5, "Input/output error"), "front.jpg cannot be read (Input/output error)."),
        (FileNotFoundError(2, "No such file"), "front.jpg is not there any more."),
    ],
)
def test_a_file_that_will_not_open_is_one_sentence(tmp_path, monkeypatch, error, part):
    path = tmp_path / "front.jpg"
    path.write_bytes(camera_jpeg())

    def refuse(*_, **__):
        raise error

    monkeypatch.setattr(Path, "open", refuse)
    assert why(probe(path)).startswith(part)


def test_large_pictures_warn_nobody_and_change_no_setting():
    data = with_frame(saved(plain(), "JPEG"), 14000, 14000)
    before = (Image.MAX_IMAGE_PIXELS, list(warnings.filters), dict(Image.OPEN))
    with warnings.catch_warnings(record=True) as warned:
        warnings.simplefilter("always")
        assert isinstance(probe(data), Picture)
    assert warned == []
    assert before == (Image.MAX_IMAGE_PIXELS, list(warnings.filters), dict(Image.OPEN))
