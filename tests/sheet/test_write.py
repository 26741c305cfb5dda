"""A sheet is written whole or not at all, and trouble is told in one sentence."""

import errno

import pytest

from inspector.sheet import write
from inspector.sheet.write import SheetTrouble, write_atomically


def test_the_file_holds_what_was_written_and_nothing_lies_beside_it(tmp_path):
    path = tmp_path / "sheet.pdf"
    path.write_bytes(b"older")
    write_atomically(path, b"newer")
    assert path.read_bytes() == b"newer"
    assert [p.name for p in tmp_path.iterdir()] == ["sheet.pdf"]


def test_it_is_on_disk_before_it_takes_the_name(tmp_path, monkeypatch):
    done = []
    flush, replace = write.os.fsync, write.os.replace
    monkeypatch.setattr(write.os, "fsync", lambda handle: (done.append("flushed"), flush(handle)))
    monkeypatch.setattr(write.os, "replace", lambda *names: (done.append("named"), replace(*names)))
    write_atomically(tmp_path / "sheet.pdf", b"x")
    assert done[:2] == ["flushed", "named"]


def failing(number, name="", other=None):
    def fail(*args, **named):
        raise OSError(number, "trouble", name, None, other)

    return fail


@pytest.mark.parametrize(
    ("where", "number", "said"),
    [
        ("fsync", errno.ENOSPC, "There is no room left on the disk of {folder}. Free some space and write again."),
        ("replace", errno.EROFS, "{folder} may not be written to. Choose another folder for sheet.pdf."),
        ("fsync", errno.EIO, "{path} cannot be written (trouble). Choose another place."),
    ],
)
def test_trouble_is_one_sentence_and_what_was_there_stays(tmp_path, monkeypatch, where, number, said):
    path = tmp_path / "sheet.pdf"
    path.write_bytes(b"older")
    monkeypatch.setattr(write.os, where, failing(number))
    with pytest.raises(SheetTrouble) as trouble:
        write_atomically(path, b"newer")
    assert str(trouble.value.sentence) == said.format(folder=tmp_path, path=path)
    assert path.read_bytes() == b"older"
    assert [p.name for p in tmp_path.iterdir()] == ["sheet.pdf"]


def test_a_file_open_elsewhere_is_offered_another_name(tmp_path, monkeypatch):
    path = tmp_path / "sheet.pdf"
    path.write_bytes(b"older")
    (tmp_path / "sheet 2.pdf").write_bytes(b"taken")
    monkeypatch.setattr(write.os, "replace", failing(errno.EACCES, "part", str(path)))
    with pytest.raises(SheetTrouble, match=r"is open in another program. Close it there, or write to sheet 3\.pdf\."):
        write_atomically(path, b"newer")


def test_a_folder_that_is_not_there_is_named(tmp_path):
    with pytest.raises(SheetTrouble, match="There is no folder"):
        write_atomically(tmp_path / "none" / "sheet.pdf", b"x")


def test_a_folder_is_no_sheet(tmp_path):
    with pytest.raises(SheetTrouble, match="is a folder"):
        write_atomically(tmp_path, b"x")


def test_a_name_too_long_is_told(tmp_path):
    with pytest.raises(SheetTrouble, match="too long"):
        write_atomically(tmp_path / ("x" * 300 + ".pdf"), b"x")
