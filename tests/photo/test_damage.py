"""Whatever bytes come, the answer is a picture, a copy or a sentence, and never an exception."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import ImageFile

from inspector.photo.copies import print_copy, thumbnail
from inspector.photo.kinds import Kind
from inspector.photo.probe import Picture, probe
from inspector.photo.refusal import Refusal
from inspector.photo.whole import ends_early
from inspector.texts import Say
from tests.photo.pictures import blocks, camera_jpeg, camera_words, heic, plain, png, saved

STARTS = (
    b"",
    b"\xff\xd8\xff",
    b"\xff\xd8\xff\xe1\0\x10Exif\0\0II*\0",
    b"\x89PNG\r\n\x1a\n",
    b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR",
    b"RIFF\x20\0\0\0WEBPVP8 ",
    b"RIFF\x20\0\0\0WEBPVP8X",
    b"\0\0\0\x18ftypheic\0\0\0\0mif1heic",
    b"II*\0\x08\0\0\0",
    b"MM\0*\0\0\0\x08",
)
ROWS = [[0, 1, 2, 3], [3, 1, 2, 0]]
WHOLE = {
    "JPEG": camera_jpeg(),
    "progressive JPEG": saved(blocks(ROWS), "JPEG", progressive=True, exif=camera_words(6)),
    "PNG": saved(blocks(ROWS), "PNG", exif=camera_words(3)),
    "WebP": saved(blocks(ROWS), "WEBP", exif=camera_words(8)),
    "HEIC": heic(blocks(ROWS), exif=camera_words().tobytes()),
    "TIFF": saved(blocks(ROWS), "TIFF", compression="tiff_lzw", exif=camera_words(5)),
}


def is_sentence(found):
    return isinstance(found, Refusal) and isinstance(found.why, Say) and str(found.why)[-1] == "."


def holds(data):
    """The answers to these bytes, once they are known to be answers."""
    picture, copy = probe(data, "front.jpg"), thumbnail(data, 32, "front.jpg")
    assert isinstance(picture, Picture) or is_sentence(picture)
    assert (isinstance(copy, bytes) and copy[:2] == b"\xff\xd8") or is_sentence(copy)
    return picture, copy


@given(st.sampled_from(STARTS), st.binary(max_size=400))
@settings(max_examples=300, deadline=None)
def test_any_bytes_have_an_answer(start, rest):
    holds(start + rest)


@given(st.sampled_from(STARTS), st.binary(max_size=400))
@settings(max_examples=100, deadline=None)
@pytest.mark.filterwarnings("ignore")
def test_any_bytes_have_an_answer_where_warnings_only_warn(start, rest):
    holds(start + rest)


@pytest.mark.parametrize("kind", WHOLE)
@pytest.mark.filterwarnings("ignore")
@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_bytes_that_flipped_have_an_answer(kind, data):
    whole = bytearray(WHOLE[kind])
    places = st.integers(0, len(whole) - 1)
    changes = data.draw(st.lists(st.tuples(places, st.integers(0, 255)), min_size=1, max_size=5))
    for at, value in changes:
        whole[at] = value
    holds(bytes(whole))


@pytest.mark.parametrize("kind", ["JPEG", "progressive JPEG"])
def test_a_jpeg_cut_anywhere_is_refused(kind):
    whole = WHOLE[kind]
    taken = [at for at in range(len(whole)) if isinstance(probe(whole[:at]), Picture)]
    assert taken == []
    assert isinstance(probe(whole), Picture)


@pytest.mark.parametrize("kind", WHOLE)
def test_every_kind_cut_anywhere_has_an_answer_and_shows_nothing_false(kind):
    whole = WHOLE[kind]
    for at in range(0, len(whole), max(1, len(whole) // 150)):
        _, copy = holds(whole[:at])
        assert isinstance(copy, Refusal), at


@pytest.mark.parametrize("kind", WHOLE)
def test_a_file_cut_in_its_pixels_is_told_to_be_cut_short(kind):
    if kind == "TIFF":  # its tags stand before its pixels only where they are not packed
        whole = saved(plain(), "TIFF")
        found = probe(whole[:-100], "front.jpg")
    else:
        found = probe(WHOLE[kind][:-9], "front.jpg")
    assert str(found.why) == (
        "front.jpg is cut short: the file ends before the picture does. Copy it again from the"
        " camera or card, and choose that."
    )


@pytest.mark.parametrize("kind", ["JPEG", "progressive JPEG", "PNG"])
def test_what_follows_a_whole_picture_does_no_harm(kind):
    # Common practice, no source: telephones put films and maps of depth behind the picture.
    picture, copy = holds(WHOLE[kind] + b"\0more" * 99)
    assert isinstance(picture, Picture)
    assert isinstance(copy, bytes)


def test_the_end_of_a_small_picture_inside_the_tags_is_not_the_end():
    inside = saved(plain((8, 8)), "JPEG")
    tags = b"\xff\xe1" + (len(inside) + 2).to_bytes(2, "big") + inside
    whole = WHOLE["JPEG"]
    assert not ends_early(Kind.JPEG, whole[:2] + tags + whole[2:])
    assert ends_early(Kind.JPEG, whole[:2] + tags + whole[2:-2])


@pytest.mark.parametrize("boxes", [b"", b"\0\0\0\x08free", b"\0\0\0\x01free" + b"\xff" * 8])
def test_a_heic_without_its_pixels_is_cut_short(boxes):
    whole = WHOLE["HEIC"]
    assert ends_early(Kind.HEIC, whole[: whole.index(b"mdat") - 4] + boxes)


@pytest.mark.parametrize("boxes", [b"\0\0\0\0free..", b"\0\0\0\x01free" + b"\0" * 7 + b"\x10", b"\0"])
def test_a_heic_may_end_in_other_boxes(boxes):
    assert not ends_early(Kind.HEIC, WHOLE["HEIC"] + boxes)


def test_pixels_that_are_fewer_than_the_header_says_are_damage():
    short = png(500, 400, b"\0" * 1000)
    picture, copy = holds(short)
    assert isinstance(picture, Picture)  # only decoding shows it
    assert str(copy.why).startswith("front.jpg is damaged and cannot be shown.")


def test_too_little_memory_is_one_sentence(monkeypatch):
    def refuse(_):
        raise MemoryError

    monkeypatch.setattr(ImageFile.ImageFile, "load", refuse)
    found = print_copy(WHOLE["PNG"], name="front.png")
    assert str(found.why).startswith("front.png needs more memory than this computer has free.")
