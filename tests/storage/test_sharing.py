"""Copies to share are new files in a folder; what is kept, and what stands there, is not touched."""

import hashlib

import pytest

from inspector.photo.masks import Cover
from inspector.photo.refusal import Cancelled
from inspector.storage.photographs import Photographs, State
from inspector.storage.sharing import ToShare, share
from inspector.storage.taking import Taking
from inspector.storage.thumbs import Thumbs
from tests.photo.pictures import SERIAL, camera_jpeg, shown


@pytest.fixture
def kept(tmp_path):
    return Photographs(tmp_path / "photographs")


@pytest.fixture
def folder(tmp_path):
    made = tmp_path / "to the club"
    made.mkdir()
    return made


def of(kept, size=(64, 48), **words):
    return kept.keep(camera_jpeg(size=size, **words)).sha256


def test_a_copy_of_each_stands_in_the_folder_and_the_originals_are_unchanged(kept, folder):
    hashes = [of(kept, size=(64 + n, 48)) for n in range(3)]
    before = {p: (p.read_bytes(), p.stat().st_mtime_ns) for p in kept.folder.iterdir() if p.is_file()}
    cover = Cover(0.0, 0.0, 0.5, 0.5)
    found = share(kept, [ToShare(h, f"Frame number {n}", (cover,)) for n, h in enumerate(hashes)], folder)
    assert [p.name for p in found.written] == [f"0{n + 1} Frame number {n}.jpg" for n in range(3)]
    assert found.troubles == ()
    assert {p: (p.read_bytes(), p.stat().st_mtime_ns) for p in before} == before
    assert [kept.check(h) for h in hashes] == [State.OK] * 3
    assert [hashlib.sha256(kept.path(h).read_bytes()).hexdigest() for h in hashes] == hashes
    assert all(SERIAL.encode() in kept.path(h).read_bytes() for h in hashes)
    assert all(SERIAL.encode() not in p.read_bytes() for p in folder.iterdir())


def test_nothing_in_the_folder_is_written_over(kept, folder):
    (folder / "01 Tank.jpg").write_text("another's")
    found = share(kept, [ToShare(of(kept), "Tank")], folder)
    assert [p.name for p in found.written] == ["01 Tank 2.jpg"]
    assert (folder / "01 Tank.jpg").read_text() == "another's"
    assert len(list(folder.iterdir())) == 2


@pytest.mark.parametrize(
    ("words", "name"), [("a/b: c?", "01 a b  c.jpg"), ("", "01 photograph.jpg"), ("x" * 90, f"01 {'x' * 60}.jpg")]
)
def test_a_name_is_one_that_every_system_takes(kept, folder, words, name):
    assert [p.name for p in share(kept, [ToShare(of(kept), words)], folder).written] == [name]


def test_what_is_gone_is_told_and_the_others_are_written(kept, folder):
    found = share(kept, [ToShare("0" * 64, "Gone"), ToShare(of(kept), "Tank")], folder)
    assert [p.name for p in found.written] == ["02 Tank.jpg"]
    assert [str(said) for said in found.troubles] == [
        "The photograph 000000000000 is not where it was kept. Put its file back, or take it in again."
    ]


def test_a_folder_that_is_not_there_is_told(kept, folder):
    found = share(kept, [ToShare(of(kept), "Tank")], folder / "none")
    assert found.written == ()
    assert len(found.troubles) == 1


def test_stopped_what_was_written_stays(kept, folder):
    def report(done, total, name):
        if done == 1:
            raise Cancelled

    wanted = [ToShare(of(kept, size=(64 + n, 48)), "Tank") for n in range(3)]
    assert len(share(kept, wanted, folder, report).written) == 1
    assert len(list(folder.iterdir())) == 1


def test_a_time_is_in_the_copy_where_it_is_wished(kept, folder):
    found = share(kept, [ToShare(of(kept), "Tank", taken="2026:05:09 10:11:12")], folder)
    assert shown(found.written[0].read_bytes()).getexif().get_ifd(0x8769)[0x9003] == "2026:05:09 10:11:12"


def test_taking_keeps_the_original_and_a_thumbnail_and_makes_the_print_copy_later(tmp_path, kept):
    thumbs = Thumbs(tmp_path / "thumbnails", kept)
    data, small = camera_jpeg(), camera_jpeg(size=(32, 24))
    receipt = Taking(kept, thumbs).keep(data, small)
    assert kept.path(receipt.sha256).read_bytes() == data
    assert thumbs.get(receipt.sha256) == small
    assert not kept.copy_path(receipt.sha256).exists()
    assert isinstance(kept.copy(receipt.sha256), bytes)
    assert kept.copy_path(receipt.sha256).exists()
    assert kept.path(receipt.sha256).stat().st_mode & 0o222 == 0
