"""Bags as the commands write and check them."""

import json

import bagit
import pytest

from inspector.cli import AMISS, WELL, main
from tests.storage.bagged import HERE, ID, changed_at, files, filled, library_at, unzipped
from tests.storage.shelf import Clock, opened, said


@pytest.fixture
def data(tmp_path, monkeypatch):
    filled(tmp_path)
    monkeypatch.setenv("INSPECTOR_DATA", str(tmp_path / HERE))
    return tmp_path


def told(capsys):
    out, err = capsys.readouterr()
    assert "Traceback" not in out + err
    return out, err


def test_packed_by_command_it_is_whole_to_us_and_to_another_program(data, capsys):
    assert main(["pack", ID, "--to", str(data / "new" / "bag.zip"), "--json"]) == WELL
    answer = json.loads(told(capsys)[0])
    bagit.Bag(str(unzipped(data / "new" / "bag.zip", data / "out"))).validate()
    assert main(["check", str(data / "new" / "bag.zip")]) == WELL
    said_of_it = told(capsys)[0]
    assert "bag.zip: As it should be." in said_of_it
    assert answer["sha256"] in said_of_it
    assert "in the library here, the same" in said_of_it


def test_the_check_names_the_file_that_was_changed(data, capsys):
    assert main(["pack", ID, "--to", str(data / "bag.zip")]) == WELL
    contents = files(data / "bag.zip")
    name = next(n for n in contents if n.endswith("record.json"))
    changed = changed_at(data / "changed.zip", contents, name, 40)
    told(capsys)
    assert main(["check", str(changed), "--json"]) == AMISS
    (answer,) = json.loads(told(capsys)[0]).values()
    assert any("data/record.json: changed" in line for line in answer["problems"])


def test_the_check_tells_what_is_newer_here(data, capsys):
    main(["pack", ID, "--to", str(data / "bag.zip")])
    with library_at(data / HERE) as library:
        opened(library, Clock()).do(said("later"))
    assert main(["check", str(data / "bag.zip")]) == WELL
    assert "with later changes; 1 changes here are not in the bag" in told(capsys)[0]


def test_a_folder_that_is_a_bag_is_checked_as_one(data, capsys):
    main(["pack", ID, "--to", str(data / "bag.zip"), "--sharing", "--without-names"])
    home = unzipped(data / "bag.zip", data / "out")
    assert main(["check", str(home)]) == WELL
    assert "made to be shared" in told(capsys)[0]
    (home / "data" / "summary.txt").unlink()
    assert main(["check", str(home)]) == AMISS
    assert "data/summary.txt: missing" in told(capsys)[0]


@pytest.mark.parametrize("content", [b"", b"PK", b"PK\x05\x06" + bytes(18), bytes(5000)])
def test_what_is_no_bag_is_one_sentence(data, capsys, content):
    (data / "x.zip").write_bytes(content)
    assert main(["check", str(data / "x.zip")]) == AMISS
    assert len(told(capsys)[0].splitlines()) == 1


def test_where_nothing_can_be_written_it_is_one_sentence(data, capsys):
    (data / "file").write_bytes(b"")
    assert main(["pack", ID, "--to", str(data / "file" / "bag.zip")]) == AMISS
    out, err = told(capsys)
    assert (out, len(err.splitlines())) == ("", 1)


def test_a_bag_is_judged_as_its_record_is(data, capsys):
    main(["pack", ID, "--to", str(data / "bag.zip")])
    told(capsys)
    assert main(["judge", ID]) == WELL
    here = told(capsys)
    assert main(["judge", str(data / "bag.zip")]) == WELL
    assert told(capsys) == here
    contents = files(data / "bag.zip")
    name = next(n for n in contents if n.endswith("summary.txt"))
    assert main(["judge", str(changed_at(data / "changed.zip", contents, name, 1))]) == AMISS
    assert "not whole: data/summary.txt: changed" in told(capsys)[1]
