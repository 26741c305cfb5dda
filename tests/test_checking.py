"""The whole answer of a check as data, for each kind of file; and what is told of files that are none of ours."""

import json
import shutil

import pytest

from inspector import checking
from inspector.checking import check, kind_of
from inspector.cli import AMISS, WELL, main
from inspector.demo import DEMO_ID
from inspector.record.verbs import set_claim
from inspector.resource import sample_profiles
from inspector.sheet.keys import make_key
from tests.test_sealing import AT, LATER, data, library, seal, session

__all__ = ["data", "library", "session"]  # fixtures


def answer(path, capsys, code=WELL):
    capsys.readouterr()
    assert main(["check", str(path), "--json"]) == code
    ((name, told),) = json.loads(capsys.readouterr().out).items()
    assert name == str(path)
    assert told["well"] is (code == WELL)
    return told


def test_a_sheet_is_answered_whole(session, library, data, tmp_path, capsys):
    key = make_key(data, AT)
    sheet = seal(session, library, key)
    session.do(set_claim("model_year", 1954))
    seal(session, library, key, LATER)
    (tmp_path / "sheet.pdf").write_bytes(sheet)
    told = answer(tmp_path / "sheet.pdf", capsys)
    assert (told["kind"], told["sealed"], told["as_sealed"], told["problems"]) == ("sheet", True, True, [])
    assert told["key"] == {"fingerprint": key.fingerprint, "of_this_computer": True}
    assert (told["record"], told["version"], told["sealed_at"]) == (DEMO_ID, 1, AT)
    assert (told["here"]["newest_version"], told["here"]["same_file"]) == (2, True)

    (tmp_path / "sheet.pdf").write_bytes(sheet[:5000] + b"x" + sheet[5001:])
    told = answer(tmp_path / "sheet.pdf", capsys, AMISS)
    assert told["as_sealed"] is False
    assert told["changed"][0].startswith("Byte 5000 was changed, in ")
    assert told["problems"] == [f"Not as sealed. {told['changed'][0]}"]


def test_a_record_is_answered_whole_and_said_to_carry_no_seal(session, library, tmp_path, capsys):
    file = tmp_path / "record.json"
    file.write_text(session.record.model_dump_json(), "utf-8")
    told = answer(file, capsys)
    assert (told["kind"], told["record"], told["machine"]) == ("record", DEMO_ID, "Brackwater Heron 600")
    assert (told["sealed"], told["versions"], told["profile"]["id"]) == (False, [], "brackwater-heron")
    assert told["here"] == {"record": True, "same": True, "newest_version": None}
    assert "A record file carries no seal, so nothing tells whether it was changed." in told["notes"]
    session.do(set_claim("model_year", 1954))
    assert answer(file, capsys)["here"]["same"] is False


def test_a_profile_is_answered_whole_and_another_version_that_ships_is_told(tmp_path, capsys):
    told = answer(sample_profiles() / "brackwater-heron", capsys)
    assert (told["kind"], told["profile"], told["title"]) == ("profile", "brackwater-heron", "Brackwater Heron 600")
    folder = shutil.copytree(sample_profiles() / "brackwater-heron", tmp_path / "mine")
    text = (folder / "profile.toml").read_text("utf-8")
    line = f'version = "{told["version"]}"'
    (folder / "profile.toml").write_text(text.replace(line, 'version = "0.0.1"', 1), "utf-8")
    mine = answer(folder, capsys)
    assert mine["version"] == "0.0.1"
    assert f"The profile of this name that ships here is version {told['version']}." in mine["notes"]
    assert not any("ships here" in note for note in told["notes"])


def test_a_bag_is_answered_whole(session, library, data, tmp_path, capsys):
    key = make_key(data, AT)
    seal(session, library, key)
    bag = tmp_path / "bag.zip"
    assert main(["pack", DEMO_ID, "--to", str(bag)]) == WELL
    told = answer(bag, capsys)
    assert (told["kind"], told["whole"], told["changed"], told["sharing"]) == ("bag", True, [], False)
    assert (told["record"], told["bagit"], told["here"]["same"]) == (DEMO_ID, "1.0", True)
    assert told["versions"] == [{"version": 1, "sealed_at": AT, "key": key.fingerprint}]
    session.do(set_claim("model_year", 1954))
    assert answer(bag, capsys)["here"]["changes_here"] == 1


# what is none of ours


def test_a_kind_is_known_by_how_it_begins_whatever_its_name(tmp_path):
    for begin, kind in ((b"%PDF-1.4", "sheet"), (b"PK\x03\x04", "bag"), (b' {"id"', "record"), (b"other", "unknown")):
        (tmp_path / "file").write_bytes(begin)
        assert kind_of(tmp_path / "file") == kind
    (tmp_path / "record.json").write_bytes(b"%PDF-1.4")
    assert kind_of(tmp_path / "record.json") == "sheet"


def test_a_file_larger_than_anything_made_here_is_not_read(tmp_path, monkeypatch):
    (tmp_path / "large.pdf").write_bytes(b"%PDF-1.4" + bytes(5000))
    monkeypatch.setattr(checking, "LARGEST", 5000)
    (problem,) = check(tmp_path / "large.pdf").problems
    assert "which nothing made here is; it was not checked" in str(problem)


def test_a_link_is_followed_to_its_file(session, library, tmp_path):
    (tmp_path / "kept.json").write_text(session.record.model_dump_json(), "utf-8")
    (tmp_path / "link").symlink_to(tmp_path / "kept.json")
    assert check(tmp_path / "link").well


@pytest.mark.parametrize("name", ["\0", "x" * 5000])
def test_a_name_that_no_file_can_have_is_a_sentence(tmp_path, name):
    (problem,) = check(tmp_path / name).problems
    assert str(problem).endswith(".")
