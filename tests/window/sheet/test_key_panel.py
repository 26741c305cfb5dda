"""The passphrase of the seal key is set, changed and taken away in the window; no slip loses the key."""

import pytest
from PySide6.QtWidgets import QLineEdit

from inspector.sheet import keys as keys_module
from inspector.sheet.keys import key_path, key_state, make_key, open_key, own_fingerprints
from tests.window.sheet.test_signing import declare, signing

__all__ = ["signing"]  # a fixture
AT = "2026-05-09T10:00:00+02:00"


@pytest.fixture
def panel(house, signing, monkeypatch):
    monkeypatch.setattr(keys_module, "ROUNDS", 10)
    made = []

    def opened():
        signing.sealer.show_record("")
        house.press(signing.sealer.own)
        made.append(signing.sealer.panel)
        return made[-1]

    yield opened
    for dialog in made:
        dialog.close()


def write(panel, old="", new="", again=None):
    for field, text in ((panel.old, old), (panel.new, new), (panel.again, new if again is None else again)):
        field.show_value(text)


def settled(qtbot, panel):
    qtbot.waitUntil(lambda: panel._job is None, timeout=20_000)
    return panel.state.words


def test_a_passphrase_is_set_changed_and_taken_away(house, panel, qtbot):
    key = make_key(house.library, AT)
    shown = panel()
    assert key.fingerprint in shown.fingerprint.words.replace(" ", "")
    assert not shown.old.isVisible()
    write(shown, new="heron")
    house.press(shown.keep)
    assert "opens with the new passphrase alone" in settled(qtbot, shown)
    assert (key_state(house.library), open_key(house.library, "heron")) == ("locked", key)
    assert shown.old.isVisible()
    assert [field.value() for field in (shown.old, shown.new, shown.again)] == ["", "", ""]

    write(shown, old="heron", new="teal")
    house.press(shown.keep)
    settled(qtbot, shown)
    assert open_key(house.library, "teal") == key

    write(shown, old="teal")
    house.press(shown.remove)
    assert settled(qtbot, shown) == "The key opens without a passphrase now."
    assert open_key(house.library) == key


@pytest.mark.parametrize(("old", "new", "again", "said"), [
    ("snipe", "teal", "teal", "That passphrase does not open the seal key."),
    ("", "teal", "teal", "The seal key has a passphrase."),
    ("heron", "teal", "tael", "not the same both times"),
    ("heron", "", "", "No new passphrase is written yet."),
    ("heron", "x" * 201, "x" * 201, "longer than 200 letters"),
])  # fmt: skip
def test_a_slip_is_one_sentence_and_the_key_stays_as_it_was(house, panel, qtbot, old, new, again, said):
    make_key(house.library, AT, "heron")
    before = key_path(house.library).read_bytes()
    shown = panel()
    write(shown, old, new, again)
    house.press(shown.keep)
    assert said in settled(qtbot, shown)
    assert key_path(house.library).read_bytes() == before


def test_what_is_written_is_hidden(panel):
    shown = panel()
    for field in (shown.old, shown.new, shown.again):
        assert field.edit.echoMode() is QLineEdit.EchoMode.Password


def test_the_first_key_is_made_with_a_passphrase(house, panel, qtbot, signing):
    shown = panel()
    assert shown.fingerprint.words == "There is no key yet."
    assert not shown.keep.isVisible()
    write(shown, new="heron", again="huron")
    house.press(shown.fresh)
    assert key_state(house.library) == "none"
    write(shown, new="heron")
    house.press(shown.fresh)
    settled(qtbot, shown)
    assert key_state(house.library) == "locked"
    declare(house)
    assert signing.sealer.passphrase.isVisibleTo(signing)


def test_a_new_key_leaves_the_old_one_known(house, panel, qtbot):
    old = make_key(house.library, AT)
    shown = panel()
    house.press(shown.fresh)
    assert "The key is new." in settled(qtbot, shown)
    assert len(own_fingerprints(house.library)) == 2
    assert old.fingerprint not in shown.fingerprint.words.replace(" ", "")


def test_a_key_that_others_could_read_is_told_where_it_is_used(house, signing):
    make_key(house.library, AT)
    key_path(house.library).chmod(0o644)
    signing.close()
    page = house.window.pages["sheet"]
    page.open_signing()
    assert "Others who use this computer could read the key until now" in page.signing.sealer.state.words
    assert key_path(house.library).stat().st_mode & 0o077 == 0
