"""Knowing about photographs loads no decoder: only looking at one does."""

import pytest

from tests.house.project import loaded_after

HEAVY = ("PIL", "pillow_heif", "numpy", "PySide6", "shiboken6", "cv2", "reportlab")
PARTS = (
    "inspector.photo",
    "inspector.photo.intake",
    "inspector.photo.copies",
    "inspector.storage.photographs",
    "inspector.storage.thumbs",
)


@pytest.mark.parametrize("part", PARTS)
def test_no_decoder_is_loaded_before_it_is_needed(part):
    loaded = loaded_after(part)
    assert part in loaded
    assert sorted(name for name in loaded if name.split(".")[0] in HEAVY) == []


@pytest.mark.parametrize("part", PARTS[:3])
def test_pictures_know_neither_a_record_nor_where_things_are_kept(part):
    beyond = ("inspector.record", "inspector.storage", "inspector.profile", "inspector.session")
    assert [name for name in loaded_after(part) if name.startswith(beyond)] == []
