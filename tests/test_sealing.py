"""A version is sealed, kept and found again; of any sheet it is told what it is and what is newer here."""

import pytest

from inspector.checked import told_of_sheet
from inspector.cli import AMISS, WELL, main
from inspector.demo import DEMO_ID, put_demo
from inspector.handover import owners_file
from inspector.issuing import frozen_record, place_of, sealed_sheet
from inspector.profile.read import read_profile
from inspector.record.signing import sign
from inspector.record.verbs import mark, set_claim
from inspector.record.versions import keep_version, stands_as_sealed
from inspector.record.words import Mark
from inspector.sealing import drawn, seal_version
from inspector.session import Session
from inspector.sheet.keys import make_key
from inspector.sheet.versioning import DifferencesBlock
from inspector.storage.library import Library
from tests.sheet import read

AT = "2026-05-16T12:00:00+01:00"
LATER = "2026-05-17T09:00:00+01:00"
DRAWN = (((0.0, 0.0), (9.0, 4.0), (18.0, 1.0)),)


@pytest.fixture
def data(tmp_path, monkeypatch):
    monkeypatch.setenv("INSPECTOR_DATA", str(tmp_path / "data"))
    return tmp_path / "data"


@pytest.fixture
def library(data):
    with Library.open(data, lambda: AT) as library:
        put_demo(library)
        yield library


@pytest.fixture
def session(library):
    folder = library.load(DEMO_ID).profile_folder
    return Session(library, DEMO_ID, read_profile(folder).profile, lambda: AT)


def seal(session, library, key, at=AT):
    version = seal_version(session.profile, session.record, place_of(library), key, at)
    session.do(keep_version(version))
    return sealed_sheet(version, place_of(library))


def lines(data, folder, library):
    return [str(line) for line in told_of_sheet(data, folder, library).all()]


def text(sheet):
    return " ".join(read.flat(sheet).split())


def test_two_versions_from_signing_to_checking(session, library, data):
    place, key = place_of(library), make_key(data, AT)
    session.do(sign(session.record, "inspector", DRAWN, "I looked.", AT))
    first = seal(session, library, key)
    assert stands_as_sealed(session.record).number == 1
    assert drawn(session.profile, session.record, place, LATER) == first
    assert "It is the very file that was sealed here as version 1." in lines(first, data, library)
    printed = text(first)
    assert "It is this computer’s clock, not witnessed." in printed
    assert key.fingerprint in printed.replace(" ", "")
    assert "not yet signed" in printed  # the seller did not

    assert (session.undo_label, session.undo()) == ("", None)  # what is sealed is not taken back
    session.do(mark(session.record, "tank", "inspector", LATER, Mark.DOUBT))
    assert stands_as_sealed(session.record) is None
    assert "The record here was changed since version 1 was sealed." in lines(first, data, library)
    session.undo()
    assert stands_as_sealed(session.record).number == 1
    session.do(set_claim("model_year", 1954))

    second = seal(session, library, key, LATER)
    printed = text(second)
    assert "Version 1 was sealed on" in printed
    assert "Claim, model year: now “1954”, before “1953”." in printed
    assert "Record DEM01953, version 2" in printed
    assert "Newer here: version 2, sealed on 17 May 2026, 09:00." in lines(first, data, library)

    one, two = session.record.versions
    assert sealed_sheet(one, place) == first
    assert sealed_sheet(two, place) == second
    assert frozen_record(one, place).claim.model_year == 1953
    assert two.differences == ("Claim, model year: now “1954”, before “1953”.",)


def sealed_and_left(data, *steps):
    """The sheet of the demo machine as sealed in the library there, which is closed again after these steps."""
    with Library.open(data, lambda: AT) as library:
        profile = read_profile(library.load(put_demo(library)).profile_folder).profile
        session = Session(library, DEMO_ID, profile, lambda: AT)
        first = seal(session, library, make_key(data, AT))
        for step in steps:
            session.do(step)
    return first


def test_the_owners_file_and_the_commands_copies_tell_what_differs(data, tmp_path):
    first = sealed_and_left(data, set_claim("model_year", 1954))
    for copy in ("seller", "owner"):
        file = tmp_path / f"{copy}.pdf"
        assert main(["sheet", DEMO_ID, "--copy", copy, "--to", str(file)]) == WELL
        printed = text(file.read_bytes())
        assert "Version 1 was sealed on 16 May 2026, 12:00." in printed
        assert "Claim, model year: now “1954”, before “1953”." in printed
        assert file.read_bytes() != first


def test_the_command_gives_the_sealed_sheet_while_nothing_on_it_was_changed(data, tmp_path):
    first, file = sealed_and_left(data), tmp_path / "seller.pdf"
    assert main(["sheet", DEMO_ID, "--copy", "seller", "--to", str(file)]) == WELL
    assert file.read_bytes() == first


def test_an_owners_file_is_made_where_the_version_before_is_lost(session, library, data):
    seal(session, library, make_key(data, AT))
    place = place_of(library)
    (place.frozen.folder / session.record.versions[0].whole).unlink()
    sheet = owners_file(session.profile, session.record, place, LATER)
    (block,) = (one for one in sheet.blocks if isinstance(one, DifferencesBlock))
    lost = "What differs cannot be told: that version is not kept whole on this computer any more."
    assert str(block.rows[0].said) == lost


def test_the_command_tells_of_sealed_and_changed_sheets(session, library, data, tmp_path, capsys):
    sheet = seal(session, library, make_key(data, AT))
    sound, changed = tmp_path / "sound.pdf", tmp_path / "changed.pdf"
    sound.write_bytes(sheet)
    at = len(sheet) // 3
    changed.write_bytes(sheet[:at] + bytes([sheet[at] ^ 1]) + sheet[at + 1 :])
    assert main(["check", str(sound)]) == WELL
    out = capsys.readouterr().out
    assert "As sealed." in out
    assert "by a key of this computer" in out
    assert main(["check", str(changed)]) == AMISS
    out, err = capsys.readouterr()
    assert f"Not as sealed. Byte {at} was changed, in " in out
    assert "Traceback" not in out + err


def test_another_computer_is_told_whose_key_it_is_not(session, library, data, tmp_path):
    sheet = seal(session, library, make_key(data, AT))
    told = told_of_sheet(sheet, tmp_path / "elsewhere", None)
    assert told.well
    said = " ".join(map(str, told.all()))
    assert "a key that is not of this computer" in said
    assert "Compare these figures" in said


def test_a_sheet_sealed_anew_by_somebody_else_is_told_by_key_and_record(session, library, data, tmp_path):
    seal(session, library, make_key(data, AT))
    other = make_key(tmp_path / "other", AT)
    forged = session.record.model_copy(
        update={"claim": session.record.claim.model_copy(update={"model_year": 1951}), "versions": ()}
    )
    version = seal_version(session.profile, forged, place_of(library), other, AT)
    said = lines(sealed_sheet(version, place_of(library)), data, library)
    assert "The record inside is not the one kept here as version 1." in said
    assert "Claim, model year: now “1951”, before “1953”." in said
    assert any("not of this computer" in line for line in said)
