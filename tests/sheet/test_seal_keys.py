"""The seal key is made once, for its user alone, and each way of losing it is one sentence."""

import contextlib
import errno
import os
import subprocess

import pytest
from asn1crypto import keys, pem
from cryptography.hazmat.primitives import serialization

from inspector.sheet import keys as keys_module
from inspector.sheet.keys import (
    KeyTrouble,
    WrongPassphrase,
    change_passphrase,
    close_to_others,
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
        to.parent.mkdir(parents=True, exist_ok=True)
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


# the passphrase


def test_another_program_opens_the_key_with_its_passphrase(kept):
    """OpenSSL reads what RFC 8018 lays down."""
    command = ["openssl", "pkey", "-in", str(key_path(kept[0])), "-outform", "DER"]
    opened = subprocess.run([*command, "-passin", "pass:heron"], capture_output=True, check=False)
    theirs, ours = (serialization.load_der_private_key(der, None) for der in (opened.stdout, kept[1].private))
    assert theirs.private_numbers() == ours.private_numbers()
    assert subprocess.run([*command, "-passin", "pass:teal"], capture_output=True, check=False).returncode != 0


def test_a_passphrase_is_as_slow_to_guess_as_is_advised_today(kept):
    """OWASP Password Storage Cheat Sheet (2023): PBKDF2 with HMAC-SHA-256, 600 000 rounds or more."""
    (locked,) = [der for kind, _, der in pem.unarmor(key_path(kept[0]).read_bytes(), multiple=True) if "KEY" in kind]
    how = keys.EncryptedPrivateKeyInfo.load(locked)["encryption_algorithm"]
    assert (how.kdf, how.kdf_hmac, how.encryption_cipher) == ("pbkdf2", "sha256", "aes")
    assert how.kdf_iterations >= 600_000


def test_no_wrong_passphrase_is_told_as_a_damaged_key(kept, tmp_path, monkeypatch):
    monkeypatch.setattr(keys_module, "ROUNDS", 10)  # so that there is time for many
    folder = copy_of(kept, tmp_path)
    change_passphrase(folder, "heron", "teal")
    for number in range(600):  # one in 256 leaves what looks like the end of a key
        with pytest.raises(WrongPassphrase):
            open_key(folder, f"wrong {number}")


def test_the_same_letters_open_it_however_they_were_put_together(kept, tmp_path):
    folder = copy_of(kept, tmp_path)
    change_passphrase(folder, "heron", "h\u00e9ron")
    assert open_key(folder, "he\u0301ron") == kept[1]


def test_a_wrong_old_passphrase_changes_nothing(kept, tmp_path):
    folder = copy_of(kept, tmp_path)
    before = key_path(folder).read_bytes()
    with pytest.raises(WrongPassphrase):
        change_passphrase(folder, "teal", "snipe")
    assert key_path(folder).read_bytes() == before


@pytest.mark.parametrize(
    "change", [lambda f: change_passphrase(f, "heron", "x" * 201), lambda f: make_key(f, AT, "x" * 201)]
)
def test_an_endless_passphrase_is_one_sentence_and_changes_nothing(kept, tmp_path, change):
    folder = copy_of(kept, tmp_path)
    with pytest.raises(KeyTrouble, match="longer than 200 letters"):
        change(folder)
    assert open_key(folder, "heron") == kept[1]


# what cannot happen to the key


CHANGES = {
    "another passphrase": lambda folder: change_passphrase(folder, "heron", "teal"),
    "no passphrase": lambda folder: change_passphrase(folder, "heron", ""),
    "a new key": lambda folder: make_key(folder, AT),
}
ON_DISK = ("fsync", "replace", "chmod", "open", "mkdir")


@pytest.fixture
def quick(kept, monkeypatch, tmp_path_factory):
    """The same key, and keys that take no time to make or to lock."""
    other = make_key(tmp_path_factory.mktemp("other"), AT)
    monkeypatch.setattr(keys_module, "_made", lambda at: (other.certificate, other.private))
    monkeypatch.setattr(keys_module, "ROUNDS", 10)
    folder = copy_of(kept, tmp_path_factory.mktemp("quick"))
    change_passphrase(folder, "heron", "heron")
    return folder, kept[1]


def cut_short(folder, what, steps):
    """Whether the change came to its end before the power went, after so many steps that touch the disk."""
    child = os.fork()
    if child == 0:
        _until_the_power_goes(steps)
        try:
            CHANGES[what](folder)
        finally:
            os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0


def _until_the_power_goes(steps):
    left = iter(range(steps))

    def counted(do):
        def step(*given, **named):
            return do(*given, **named) if next(left, None) is not None else os._exit(9)

        return step

    for name in ON_DISK:
        setattr(os, name, counted(getattr(os, name)))


def holds(folder, key):
    """Whether the key is still there and opens, under its own name or set aside."""
    for path in (folder / "seal").glob("key*.pem"):
        for passphrase in ("heron", "teal", ""):
            with contextlib.suppress(KeyTrouble):
                if keys_module._opened(path.read_bytes(), passphrase, path) == key:
                    return True
    return False


@pytest.mark.parametrize("what", CHANGES)
def test_a_power_cut_at_any_step_loses_no_key(quick, tmp_path, what):
    for steps in range(60):
        folder = copy_of(quick, tmp_path / str(steps))
        ended = cut_short(folder, what, steps)
        assert holds(folder, quick[1])
        assert key_state(folder) in ("locked", "ready")
        assert own_fingerprints(folder) >= {quick[1].fingerprint, fingerprint_of(folder)}
        if ended:
            break
    assert steps > 3
    assert ended


def test_a_power_cut_while_the_first_key_is_made_leaves_none_or_all_of_it(tmp_path, quick):
    for steps in range(60):
        folder = tmp_path / str(steps)
        folder.mkdir()
        ended = cut_short(folder, "a new key", steps)
        assert key_state(folder) in ("none", "ready")
        if ended:
            break
    assert key_state(folder) == "ready"


def test_a_full_disk_leaves_no_half_of_a_first_key(tmp_path, monkeypatch):
    def full(_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(KeyTrouble, match="no room left"):
        make_key(tmp_path, AT)
    assert key_state(tmp_path) == "none"
    assert list((tmp_path / "seal").iterdir()) == []


def test_a_key_that_others_could_read_is_closed_to_them_and_that_is_told(kept, tmp_path):
    folder = copy_of(kept, tmp_path)
    key_path(folder).chmod(0o644)
    key_path(folder).parent.chmod(0o755)
    assert close_to_others(folder)
    assert key_path(folder).stat().st_mode & 0o777 == 0o600
    assert key_path(folder).parent.stat().st_mode & 0o777 == 0o700
    assert not close_to_others(folder)


def test_a_changed_passphrase_leaves_the_key_for_its_user_alone(kept, tmp_path):
    folder = copy_of(kept, tmp_path)
    key_path(folder).chmod(0o644)
    change_passphrase(folder, "heron", "")
    assert key_path(folder).stat().st_mode & 0o777 == 0o600
