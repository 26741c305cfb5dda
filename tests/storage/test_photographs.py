"""The bytes of a photograph are kept once, whole or not at all, and are never changed."""

import errno
import hashlib
import os
import stat
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Barrier

import pytest

from inspector.photo.intake import Taken, intake
from inspector.photo.refusal import Refusal
from inspector.storage import landing, photographs
from inspector.storage.photographs import Kept, Missing, Photographs, State
from inspector.storage.trouble import DiskFull, Locked, ReadOnly, StorageTrouble, writing
from inspector.texts import say, tr
from tests.house.project import ROOT
from tests.photo.pictures import SERIAL, camera_jpeg, shown

# Source: FIPS 180-4 (SHA-256), computed with coreutils sha256sum on the six bytes "hello\n".
HELLO = b"hello\n"
HELLO_SHA256 = "5891b5b522d5df086d0ff0b110fbd9d21bb4fc7163af34d08286a2e846f6be03"


@pytest.fixture
def kept(tmp_path):
    return Photographs(tmp_path / "photographs")


def names(folder):
    """Everything in the folder, whatever its name."""
    return sorted(p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file())


@pytest.fixture(params=["bytes", "path"])
def source(request, tmp_path):
    """The same six bytes in memory and in a file."""
    path = tmp_path / "hello"
    path.write_bytes(HELLO)
    return path if request.param == "path" else HELLO


def test_bytes_are_kept_under_their_sha256(kept, source):
    assert kept.keep(source) == Kept(HELLO_SHA256, 6, already=False)
    assert kept.path(HELLO_SHA256).read_bytes() == HELLO
    assert names(kept.folder) == [HELLO_SHA256]


def test_the_same_bytes_are_kept_once(kept, source):
    kept.keep(HELLO)
    before = (kept.folder / HELLO_SHA256).stat()
    assert kept.keep(source) == Kept(HELLO_SHA256, 6, already=True)
    after = (kept.folder / HELLO_SHA256).stat()
    assert (before.st_ino, before.st_mtime_ns) == (after.st_ino, after.st_mtime_ns)
    assert names(kept.folder) == [HELLO_SHA256]


def test_what_is_kept_is_read_only(kept, source):
    kept.keep(source)
    mode = (kept.folder / HELLO_SHA256).stat().st_mode
    assert stat.S_IMODE(mode) & 0o222 == 0


def test_no_bytes_at_all_are_kept_too(kept):
    # Source: FIPS 180-4; the SHA-256 of no bytes, as coreutils sha256sum gives it.
    empty = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
    assert kept.keep(b"") == Kept(empty, 0, already=False)
    assert kept.check(empty) is State.OK


def test_a_large_file_is_read_in_small_parts(kept, tmp_path, monkeypatch):
    path, put, parts = tmp_path / "large", os.write, []
    path.write_bytes(bytes(range(256)) * 50_000)
    monkeypatch.setattr(os, "write", lambda n, part: parts.append(len(part)) or put(n, part))
    found = kept.keep(path)
    assert found.size == sum(parts) == 12_800_000
    assert max(parts) <= 8_000_000
    assert found.sha256 == hashlib.sha256(path.read_bytes()).hexdigest()


def test_a_disk_that_takes_a_few_bytes_at_a_time_gets_them_all(kept, source, monkeypatch):
    put = os.write
    monkeypatch.setattr(os, "write", lambda n, part: put(n, part[:2]))
    kept.keep(source)
    assert kept.check(HELLO_SHA256) is State.OK


def test_bytes_are_on_the_disk_before_they_have_their_name(kept, source, monkeypatch):
    order, flush, replace = [], os.fsync, Path.replace

    def flushed(number):
        kind = "folder" if stat.S_ISDIR(os.fstat(number).st_mode) else "file"
        order.append(f"flush {kind}")
        flush(number)

    monkeypatch.setattr(os, "fsync", flushed)
    monkeypatch.setattr(Path, "replace", lambda a, b: order.append("rename") or replace(a, b))
    kept.keep(source)
    assert order == ["flush file", "rename", "flush folder"]


@pytest.mark.parametrize(("number", "kind"), [(errno.EINVAL, Kept), (errno.EIO, StorageTrouble)])
def test_a_file_system_that_flushes_no_folders_will_do(kept, monkeypatch, number, kind):
    flush = os.fsync

    def fail_for_folders(descriptor):
        if stat.S_ISDIR(os.fstat(descriptor).st_mode):
            raise OSError(number, os.strerror(number))
        flush(descriptor)

    monkeypatch.setattr(os, "fsync", fail_for_folders)
    try:
        found = kept.keep(HELLO)
    except StorageTrouble as error:
        found = error
    assert type(found) is kind


def test_a_damaged_read_only_file_is_replaced_where_the_system_minds(kept, monkeypatch):
    kept.keep(HELLO)
    rewrite(kept.path(HELLO_SHA256), b"damaged")
    kept.path(HELLO_SHA256).chmod(0o444)
    replace = Path.replace

    def mind(unfinished, target):  # as Windows does
        if target.exists() and not target.stat().st_mode & 0o200:
            raise PermissionError(errno.EACCES, "Access is denied")
        return replace(unfinished, target)

    monkeypatch.setattr(Path, "replace", mind)
    kept.keep(HELLO)
    assert kept.check(HELLO_SHA256) is State.OK


TROUBLES = [
    (errno.ENOSPC, DiskFull, "There is no room left on the disk of "),
    (errno.EDQUOT, DiskFull, "There is no room left on the disk of "),
    (errno.EROFS, ReadOnly, "cannot be written. Allow writing there"),
    (errno.EACCES, ReadOnly, "cannot be written. Allow writing there"),
    (errno.EBUSY, Locked, "Another program is using "),
    (errno.EIO, StorageTrouble, "cannot be written (Input/output error)."),
]
STEPS = {"opening": (Path, "open"), "writing": (os, "write"), "flushing": (os, "fsync"),
         "renaming": (Path, "replace")}  # fmt: skip


@pytest.mark.parametrize("step", STEPS)
@pytest.mark.parametrize(("number", "trouble", "words"), TROUBLES)
def test_trouble_is_one_sentence_and_leaves_nothing(kept, monkeypatch, step, number, trouble, words):
    def fail(*_, **__):
        raise OSError(number, os.strerror(number))

    with monkeypatch.context() as patch:
        patch.setattr(*STEPS[step], fail)
        with pytest.raises(trouble) as caught:
            kept.keep(HELLO)
    assert type(caught.value) is trouble
    said = tr(caught.value.said)
    assert words in said
    assert str(kept.folder) in said
    assert said == str(caught.value)
    assert names(kept.folder) == []
    assert kept.keep(HELLO).already is False  # and once there is room again, it is kept


@pytest.mark.parametrize("step", ["writing", "flushing", "renaming"])
def test_trouble_with_a_file_leaves_nothing_either(kept, tmp_path, monkeypatch, step):
    (tmp_path / "hello").write_bytes(HELLO)

    def fail(*_, **__):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patch:
        patch.setattr(*STEPS[step], fail)
        with pytest.raises(DiskFull):
            kept.keep(tmp_path / "hello")
    assert names(kept.folder) == []
    assert (tmp_path / "hello").read_bytes() == HELLO


def test_a_disk_that_fills_in_the_middle_leaves_nothing(kept, tmp_path, monkeypatch):
    path, put, written = tmp_path / "large", os.write, []
    path.write_bytes(b"x" * 5_000_000)

    def fill(number, part):
        if sum(written) >= 2_000_000:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        written.append(put(number, part))
        return written[-1]

    monkeypatch.setattr(os, "write", fill)
    with pytest.raises(DiskFull):
        kept.keep(path)
    assert written
    assert names(kept.folder) == []


def test_windows_own_numbers_are_known():
    error = OSError(errno.EINVAL, "used by another process")
    error.winerror = 32
    assert type(writing(error, Path("x"))) is Locked


def test_a_file_that_is_not_there_is_trouble_by_name(kept, tmp_path):
    with pytest.raises(StorageTrouble, match=r"gone\.jpg cannot be read") as caught:
        kept.keep(tmp_path / "gone.jpg")
    assert type(caught.value) is StorageTrouble
    assert names(kept.folder) == []


def test_a_place_that_is_a_file_is_one_sentence(tmp_path):
    (tmp_path / "photographs").write_text("in the way")
    with pytest.raises(StorageTrouble, match="photographs cannot be written"):
        Photographs(tmp_path / "photographs")


@pytest.mark.parametrize("sha256", ["", "a" * 63, "A" * 64, "../../etc/passwd", "0" * 64, "\0"])
def test_what_was_never_kept_is_missing(kept, sha256):
    found = kept.path(sha256)
    assert found == Missing(sha256)
    assert "is not where it was kept" in tr(found.said)
    assert kept.check(sha256) is State.MISSING
    assert kept.copy(sha256) == Missing(sha256)


def rewrite(path, data):
    path.chmod(0o644)
    path.write_bytes(data)


def test_checking_tells_kept_lost_and_changed_apart(kept, source):
    kept.keep(source)
    path = kept.path(HELLO_SHA256)
    assert kept.check(HELLO_SHA256) is State.OK
    rewrite(path, b"hellO\n")
    assert kept.check(HELLO_SHA256) is State.CHANGED
    path.unlink()
    assert kept.check(HELLO_SHA256) is State.MISSING


def test_a_disk_that_fails_is_told_from_a_change(kept, monkeypatch):
    kept.keep(HELLO)

    def fail(*_):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(photographs.hashlib, "file_digest", fail)
    assert kept.check(HELLO_SHA256) is State.UNREADABLE


@pytest.mark.parametrize("damage", [b"", b"hell", b"hellO\n"])
def test_keeping_again_puts_a_damaged_one_right(kept, source, damage):
    kept.keep(HELLO)
    rewrite(kept.path(HELLO_SHA256), damage)
    assert kept.keep(source).already is False
    assert kept.check(HELLO_SHA256) is State.OK


def test_the_listing_holds_originals_only(kept):
    shas = [kept.keep(bytes([n])).sha256 for n in range(5)]
    kept.keep(camera_jpeg(), copy=b"\xff\xd8copy\xff\xd9")
    (kept.folder / "notes.txt").write_text("by hand")
    (kept.folder / f"{landing.UNFINISHED}1").write_text("half")
    found = kept.listing()
    assert set(shas) < set(found)
    assert len(found) == 6
    assert found == sorted(found)


def test_a_folder_that_is_gone_is_trouble(kept):
    kept.folder.rmdir()
    with pytest.raises(StorageTrouble, match="cannot be read"):
        kept.listing()


KILLED = """
import os, sys
from pathlib import Path
from inspector.storage.photographs import Photographs
kept = Photographs(Path(sys.argv[1]))
Path.replace = lambda *_: os._exit(9)
kept.keep(b"hello\\n")
"""


def test_dying_between_writing_and_renaming_leaves_only_what_is_swept(tmp_path):
    folder = tmp_path / "photographs"
    done = subprocess.run([sys.executable, "-c", KILLED, str(folder)], cwd=ROOT, check=False)
    assert done.returncode == 9
    (left,) = names(folder)
    assert left.startswith(landing.UNFINISHED)
    kept = Photographs(folder)
    assert kept.listing() == []
    assert names(folder) == [left]  # so young that another process may be writing it
    long_ago = time.time() - landing.STALE_SECONDS - 1
    os.utime(folder / left, (long_ago, long_ago))
    kept = Photographs(folder)
    assert names(folder) == []
    assert kept.keep(HELLO).already is False


def test_sweeping_takes_unfinished_files_only(tmp_path):
    kept = Photographs(tmp_path)
    kept.keep(HELLO)
    (tmp_path / "notes.txt").write_text("by hand")
    copies = tmp_path / "copies"
    copies.mkdir()
    (copies / f"{landing.UNFINISHED}2").write_text("half")
    for name in names(tmp_path):
        os.utime(tmp_path / name, (0, 0))
    Photographs(tmp_path)
    assert names(tmp_path) == sorted([HELLO_SHA256, "notes.txt"])


def test_threads_that_keep_the_same_bytes_keep_them_once(kept):
    start = Barrier(8)

    def keep(_):
        start.wait(timeout=30)
        return kept.keep(HELLO)

    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(keep, range(8)))
    assert [k.already for k in found].count(False) == 1
    assert {k.sha256 for k in found} == {HELLO_SHA256}
    assert names(kept.folder) == [HELLO_SHA256]


def test_photographs_taken_in_keep_their_bytes_and_copies_lose_the_place(kept, tmp_path):
    path = tmp_path / "front.jpg"
    path.write_bytes(camera_jpeg(size=(2000, 1500), orientation=6))
    (taken,) = intake([path], kept)
    assert isinstance(taken, Taken)
    original = kept.path(taken.sha256).read_bytes()
    assert hashlib.sha256(original).hexdigest() == taken.sha256
    assert original == path.read_bytes()
    assert shown(original).getexif().get_ifd(0x8825)
    copy = kept.copy(taken.sha256)
    assert kept.copy_path(taken.sha256).read_bytes() == copy
    assert shown(copy).size == (900, 1200)
    assert dict(shown(copy).getexif()) == {}
    assert SERIAL.encode() not in copy
    assert kept.check(taken.sha256) is State.OK


def test_a_full_disk_is_an_answer_for_each_photograph(kept, monkeypatch):
    def fail(*_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", fail)
        (found,) = intake([("front.jpg", camera_jpeg())], kept)
    assert isinstance(found, Refusal)
    assert found.name == "front.jpg"
    assert "no room left" in tr(found.why)
    assert kept.listing() == []


@pytest.mark.parametrize("damage", [None, b"", b"\xff\xd8half"])
def test_a_print_copy_that_is_lost_or_cut_is_made_anew(kept, damage):
    data = camera_jpeg(size=(100, 80))
    sha256 = kept.keep(data).sha256
    first = kept.copy(sha256)
    if damage is None:
        kept.copy_path(sha256).unlink()
    else:
        kept.copy_path(sha256).write_bytes(damage)
    assert kept.copy(sha256) == first
    assert kept.copy_path(sha256).read_bytes() == first
    assert shown(first).size == (100, 80)


def test_the_copy_of_something_that_is_no_picture_is_a_sentence(kept):
    kept.keep(HELLO)
    found = kept.copy(HELLO_SHA256)
    assert isinstance(found, Refusal)
    assert "it holds text" in tr(found.why)


def test_no_room_for_a_copy_does_not_lose_the_original(kept, monkeypatch):
    land = landing.land

    def no_room_for_copies(unfinished, target, mode=0o644):
        if target.suffix == ".jpg":
            raise DiskFull(say("no room"))
        land(unfinished, target, mode)

    monkeypatch.setattr(photographs, "land", no_room_for_copies)
    data = camera_jpeg()
    sha256 = kept.keep(data, copy=b"\xff\xd8copy\xff\xd9").sha256
    assert kept.path(sha256).read_bytes() == data
    assert shown(kept.copy(sha256)).size == (64, 48)


def test_a_read_only_store_can_still_be_read(kept, monkeypatch):
    sha256 = kept.keep(camera_jpeg()).sha256

    def fail(*_, **__):
        raise OSError(errno.EROFS, os.strerror(errno.EROFS))

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", fail)
        again = Photographs(kept.folder)
        assert again.check(sha256) is State.OK
        assert again.listing() == [sha256]
        assert shown(again.copy(sha256)).size == (64, 48)
