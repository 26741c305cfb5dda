"""The seal key is made once, for its user alone, and each way of losing it is one sentence."""

import os

import pytest

from inspector.sheet.keys import (
    KeyTrouble,
    WrongPassphrase,
    change_passphrase,
    fingerprint_of,
    grouped,
    key_path,
    key_state,
    make_key,
    open_key,
    own_fingerprints,
)

AT = "2026-05-16T12:00:00+01:00"


@pytest.fixture(scope="module")
def kept(tmp_path_factory):
    folder = tmp_path_factory.mktemp("data")
    return folder, make_key(folder, AT, "heron")


def copy_of(kept, tmp_path):
    """A data folder with the same key, to be spoilt."""
    for path in (kept[0] / "seal").iterdir():
        to = tmp_path / "seal" / path.name
        to.parent.mkdir(exist_ok=True)
        to.write_bytes(path.read_bytes())
    return tmp_path


def sentence(folder, passphrase=""):
    with pytest.raises(KeyTrouble) as trouble:
        open_key(folder, passphrase)
    said = str(trouble.value.sentence)
    assert "\n" not in said
    return said


def test_before_first_use_there_is_no_key(tmp_path):
    assert key_state(tmp_path) == "none"
    assert fingerprint_of(tmp_path) == ""
    assert list(tmp_path.iterdir()) == []


def test_key_and_folder_are_for_the_user_alone(kept):
    path = key_path(kept[0])
    if os.name != "nt":
        assert path.stat().st_mode & 0o777 == 0o600
        assert path.parent.stat().st_mode & 0o777 == 0o700


def test_the_passphrase_opens_it_and_the_fingerprint_is_told_without(kept):
    folder, key = kept
    assert key_state(folder) == "locked"
    assert open_key(folder, "heron") == key
    assert fingerprint_of(folder) == key.fingerprint
    assert own_fingerprints(folder) == {key.fingerprint}


def test_the_fingerprint_is_read_in_sixteen_groups_of_four(kept):
    groups = grouped(kept[1].fingerprint).split(" ")
    assert ([len(g) for g in groups], "".join(groups)) == ([4] * 16, kept[1].fingerprint)


def test_the_private_key_does_not_show_itself(kept):
    assert "private" not in repr(kept[1])


@pytest.mark.parametrize(("given", "word"), [("", "has a passphrase"), ("teal", "does not open")])
def test_a_wrong_passphrase_is_one_sentence(kept, given, word):
    assert word in sentence(kept[0], given)
    with pytest.raises(WrongPassphrase):
        open_key(kept[0], given)


def test_the_passphrase_can_be_changed_and_taken_away(kept, tmp_path):
    folder = copy_of(kept, tmp_path)
    change_passphrase(folder, "heron", "")
    assert key_state(folder) == "ready"
    assert open_key(folder) == kept[1]


def test_a_lost_key_is_one_sentence_and_its_fingerprint_stays_known(kept, tmp_path):
    folder = copy_of(kept, tmp_path)
    key_path(folder).unlink()
    assert key_state(folder) == "lost"
    assert "is not at" in sentence(folder)
    assert own_fingerprints(folder) == {kept[1].fingerprint}


@pytest.mark.parametrize("spoil", [lambda b: b"", lambda b: b[:900], lambda b: b[:-200], lambda b: b"x" * len(b)])
def test_a_damaged_key_is_one_sentence(kept, tmp_path, spoil):
    folder = copy_of(kept, tmp_path)
    path = key_path(folder)
    path.write_bytes(spoil(path.read_bytes()))
    assert "damaged" in sentence(folder, "heron")


def test_a_new_key_sets_the_old_one_aside_and_both_are_known(kept, tmp_path):
    folder = copy_of(kept, tmp_path)
    new = make_key(folder, AT)
    assert key_state(folder) == "ready"
    assert own_fingerprints(folder) == {kept[1].fingerprint, new.fingerprint}
    old = (folder / "seal" / f"key-{kept[1].fingerprint[:16]}.pem").read_bytes()
    assert old == key_path(kept[0]).read_bytes()


def test_a_folder_that_cannot_be_written_is_one_sentence(tmp_path):
    (tmp_path / "seal").write_text("a file where the folder should be")
    with pytest.raises(KeyTrouble, match="cannot be kept"):
        make_key(tmp_path, AT)
