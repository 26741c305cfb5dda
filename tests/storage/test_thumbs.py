"""Thumbnails are made once, found again, dropped when there are too many, and never needed."""

import errno
import os
from concurrent.futures import ThreadPoolExecutor
from threading import Barrier, Lock

import pytest

from inspector.photo import copies
from inspector.storage.landing import UNFINISHED
from inspector.storage.photographs import Photographs
from inspector.storage.thumbs import Thumbs
from tests.photo.pictures import camera_jpeg, heic, plain, shown


@pytest.fixture
def kept(tmp_path):
    return Photographs(tmp_path / "photographs")


@pytest.fixture
def cache(tmp_path):
    return tmp_path / "cache" / "thumbs"


@pytest.fixture
def made(monkeypatch):
    """How often a thumbnail was made."""
    calls, make, lock = [], copies.thumbnail, Lock()

    def count(data, px):
        with lock:
            calls.append(px)
        return make(data, px)

    monkeypatch.setattr(copies, "thumbnail", count)
    return calls


def files(cache):
    return sorted(p.name for p in cache.iterdir())


def test_a_thumbnail_is_made_once_and_found_again(kept, cache, made):
    sha256 = kept.keep(camera_jpeg(size=(1600, 1200), orientation=6)).sha256
    first = Thumbs(cache, kept).get(sha256)
    assert shown(first).size == (240, 320)
    assert files(cache) == [f"{sha256}-320.jpg"]
    assert Thumbs(cache, kept).get(sha256) == first
    assert made == [320]


def test_nothing_is_made_before_it_is_asked_for(kept, cache):
    kept.keep(camera_jpeg())
    Thumbs(cache, kept)
    assert not cache.exists()


@pytest.mark.parametrize(("px", "wanted"), [(64, (64, 48)), (320, (320, 240)), (1400, (1400, 1050))])
def test_every_size_is_a_thumbnail_of_its_own(kept, cache, px, wanted):
    sha256 = kept.keep(camera_jpeg(size=(1600, 1200))).sha256
    thumbs = Thumbs(cache, kept)
    assert shown(thumbs.get(sha256, px)).size == wanted
    assert shown(thumbs.get(sha256, 96)).size == (96, 72)
    assert len(files(cache)) == 2


def test_a_heic_has_thumbnails_too(kept, cache):
    sha256 = kept.keep(heic(plain((640, 480)))).sha256
    assert shown(Thumbs(cache, kept).get(sha256, 64)).size == (64, 48)


def test_a_thumbnail_carries_no_place(kept, cache):
    sha256 = kept.keep(camera_jpeg()).sha256
    found = Thumbs(cache, kept).get(sha256)
    assert dict(shown(found).getexif()) == {}


def test_a_lost_original_has_no_thumbnail_even_if_one_is_cached(kept, cache):
    sha256 = kept.keep(camera_jpeg()).sha256
    thumbs = Thumbs(cache, kept)
    assert thumbs.get(sha256)
    kept.path(sha256).unlink()
    assert thumbs.get(sha256) is None
    assert thumbs.get("0" * 64) is None
    assert thumbs.get("no name") is None


@pytest.mark.parametrize("px", [320, 1400])
def test_what_is_no_picture_has_no_thumbnail(kept, cache, px):
    sha256 = kept.keep(b"hello\n").sha256
    assert Thumbs(cache, kept).get(sha256, px) is None


def test_an_original_that_cannot_be_read_has_no_thumbnail(kept, cache, monkeypatch):
    sha256 = kept.keep(camera_jpeg()).sha256

    def fail(*_, **__):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(type(kept.folder), "open", fail)
    thumbs = Thumbs(cache, kept)
    assert (thumbs.get(sha256), thumbs.get(sha256, 1400)) == (None, None)


@pytest.mark.parametrize("damage", [b"", b"\xff\xd8half", b"text"])
def test_a_damaged_thumbnail_is_made_anew(kept, cache, damage):
    sha256 = kept.keep(camera_jpeg()).sha256
    thumbs = Thumbs(cache, kept)
    first = thumbs.get(sha256)
    (cache / f"{sha256}-320.jpg").write_bytes(damage)
    assert thumbs.get(sha256) == first
    assert (cache / f"{sha256}-320.jpg").read_bytes() == first


def test_without_room_for_it_a_thumbnail_is_still_given(kept, cache, monkeypatch):
    data = camera_jpeg()
    sha256 = kept.keep(data).sha256

    def fail(*_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "write", fail)
    assert shown(Thumbs(cache, kept).get(sha256)).size == (64, 48)
    assert files(cache) == []


def test_threads_that_ask_for_the_same_one_make_it_once(kept, cache, made):
    sha256 = kept.keep(camera_jpeg(size=(800, 600))).sha256
    thumbs, start = Thumbs(cache, kept), Barrier(8)

    def get(_):
        start.wait(timeout=30)
        return thumbs.get(sha256)

    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(get, range(8)))
    assert len(set(found)) == 1
    assert made == [320]
    assert files(cache) == [f"{sha256}-320.jpg"]


def test_threads_that_ask_for_many_get_each(kept, cache):
    shas = [kept.keep(camera_jpeg(size=(40 + n, 40))).sha256 for n in range(12)]
    thumbs = Thumbs(cache, kept)
    with ThreadPoolExecutor(4) as pool:
        found = list(pool.map(thumbs.get, shas * 2))
    assert [shown(f).size for f in found] == [(40 + n, 40) for n in range(12)] * 2
    assert len(files(cache)) == 12


def aged(cache, shas):
    """The thumbnails were used in this order, long ago."""
    for n, sha256 in enumerate(shas):
        os.utime(cache / f"{sha256}-320.jpg", (n + 1, n + 1))


def test_the_longest_unused_are_dropped_when_there_are_too_many(kept, cache):
    shas = [kept.keep(camera_jpeg(size=(60 + n, 60))).sha256 for n in range(5)]
    thumbs = Thumbs(cache, kept)
    total = sum(len(thumbs.get(sha256)) for sha256 in shas[:4])
    aged(cache, shas[:4])
    thumbs.get(shas[0])  # so that the second is now the longest unused
    small = Thumbs(cache, kept, most=total)
    assert small.get(shas[4])
    left = files(cache)
    assert f"{shas[1]}-320.jpg" not in left
    assert {f"{shas[0]}-320.jpg", f"{shas[4]}-320.jpg"} <= set(left)
    assert sum((cache / name).stat().st_size for name in left) <= total


def test_the_sizes_never_pass_the_limit(kept, cache):
    shas = [kept.keep(camera_jpeg(size=(60 + n, 60))).sha256 for n in range(9)]
    most = 3000
    thumbs = Thumbs(cache, kept, most=most)
    for sha256 in shas + shas:
        assert thumbs.get(sha256)
        assert sum(p.stat().st_size for p in cache.iterdir()) <= most


def test_what_a_dead_process_left_is_swept(kept, cache):
    cache.mkdir(parents=True)
    (cache / f"{UNFINISHED}1").write_text("half")
    os.utime(cache / f"{UNFINISHED}1", (0, 0))
    Thumbs(cache, kept)
    assert files(cache) == []
