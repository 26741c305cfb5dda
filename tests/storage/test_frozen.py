"""What is frozen is kept under its hash, told when it was changed, and goes with its record."""

import hashlib
import shutil
from datetime import timedelta

import pytest

from inspector.record.money import Version
from inspector.record.versions import keep_version
from inspector.storage.frozen import Frozen
from inspector.storage.library import Library
from inspector.storage.trouble import Damaged, StorageTrouble
from tests.record.steps import blank
from tests.storage.shelf import ID, Clock, opened, profile


@pytest.fixture
def frozen(tmp_path):
    return Frozen(tmp_path / "versions")


def test_nothing_is_made_before_something_is_frozen(frozen):
    assert not frozen.folder.exists()


def test_what_is_frozen_is_read_back_under_its_hash(frozen):
    sha256 = frozen.keep(b"sheet")
    assert sha256 == hashlib.sha256(b"sheet").hexdigest()
    assert frozen.read(sha256) == b"sheet"
    assert frozen.keep(b"sheet") == sha256
    assert [path.name for path in frozen.folder.iterdir()] == [sha256]


def test_what_was_changed_is_told_and_mended_by_keeping_it_again(frozen):
    sha256 = frozen.keep(b"sheet")
    path = frozen.folder / sha256
    path.chmod(0o644)
    path.write_bytes(b"shoot")
    with pytest.raises(Damaged, match="not as it was frozen"):
        frozen.read(sha256)
    frozen.keep(b"sheet")
    assert frozen.read(sha256) == b"sheet"


@pytest.mark.parametrize("name", ["0" * 64, "", "../library.sqlite"])
def test_what_is_not_there_is_one_sentence(frozen, name):
    with pytest.raises(StorageTrouble, match="Put it back from a copy"):
        frozen.read(name)


def test_frozen_files_go_for_good_with_their_record(tmp_path):
    clock = Clock()
    with Library.open(tmp_path / "library", clock) as library:
        library.create(blank(), profile(tmp_path))
        sheet, whole = library.frozen.keep(b"sheet"), library.frozen.keep(b"record")
        opened(library, clock).do(keep_version(Version(number=1, sheet=sheet, whole=whole)))
        library.remove(ID)
        folder = library.frozen.folder
    clock.now += timedelta(days=40)
    Library.open(tmp_path / "library", clock).close()
    assert len(list(folder.iterdir())) == 2  # a backup would still bring the record back
    shutil.rmtree(tmp_path / "library" / "backups")
    Library.open(tmp_path / "library", clock).close()
    assert list(folder.iterdir()) == []
