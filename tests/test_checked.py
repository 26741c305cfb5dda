"""What is told of a sheet that somebody holds, against what the library here knows; in sentences and as data."""

import pytest

from inspector.checked import told_of_sheet
from inspector.demo import DEMO_ID
from inspector.handover import walk_sheet
from inspector.record.verbs import set_claim
from inspector.record.versions import attached
from inspector.sheet.checking import reason_of
from inspector.sheet.keys import grouped, make_key
from inspector.sheet.pdf import as_pdf
from inspector.sheet.seal import sealed
from inspector.storage.trouble import Damaged
from inspector.texts import say
from tests.sheet import read
from tests.test_sealing import AT, LATER, data, library, seal, session

__all__ = ["data", "library", "session"]  # fixtures


def other_pages(session, library, key):
    """A sheet with the very record of the session inside, made by other hands to say something else."""
    record = session.record.model_copy(update={"versions": ()})
    pdf = as_pdf(walk_sheet(session.profile, 1953, LATER))
    return sealed(pdf, attached(record), key, AT, reason_of(record.id, 1))


@pytest.mark.parametrize("by", ["own", "other"])
def test_other_pages_sealed_round_the_same_record_are_not_as_they_should_be(session, library, data, tmp_path, by):
    own = make_key(data, AT)
    seal(session, library, own)
    other = make_key(tmp_path / "other", AT)
    told = told_of_sheet(other_pages(session, library, own if by == "own" else other), data, library)
    assert told.check.as_sealed
    assert not told.well
    assert str(told.first).startswith("Sealed, but it is not the file that was sealed here as version 1.")
    said = " ".join(map(str, told.lines))
    assert "what its pages say may differ all the same" in said
    assert (f"Version 1 was sealed here by another key: {grouped(own.fingerprint)}." in said) is (by == "other")
    here = told.plain()["here"]
    assert (here["version"], here["same_record"], here["same_file"]) == (True, True, False)


def test_a_version_by_another_key_than_the_one_before_is_told(session, library, data):
    first = make_key(data, AT)
    seal(session, library, first)
    session.do(set_claim("model_year", 1954))
    second = seal(session, library, make_key(data, LATER), LATER)
    told = told_of_sheet(second, data, library)
    assert told.well
    assert f"It says that version 1 before it was sealed by another key: {grouped(first.fingerprint)}." in map(
        str, told.lines
    )


def test_a_next_version_is_sealed_where_the_one_before_is_lost_and_says_so(session, library, data):
    key = make_key(data, AT)
    seal(session, library, key)
    (library.frozen.folder / session.record.versions[0].whole).unlink()
    session.do(set_claim("model_year", 1954))
    second = seal(session, library, key, LATER)
    assert told_of_sheet(second, data, library).well
    printed = " ".join(read.flat(second).split())
    assert "Version 1 was sealed on" in printed
    assert "What differs cannot be told: that version is not kept whole on this computer any more." in printed


def test_a_record_that_cannot_be_read_here_is_not_told_as_missing(session, library, data, monkeypatch):
    sheet = seal(session, library, make_key(data, AT))

    def damaged(_):
        raise Damaged(say("The record is damaged."))

    monkeypatch.setattr(library, "load", damaged)
    said = [str(line) for line in told_of_sheet(sheet, data, library).lines]
    assert "The record is damaged." in said
    assert not any(line.startswith("No record") for line in said)


def test_what_was_found_is_there_as_data(session, library, data):
    key = make_key(data, AT)
    first = seal(session, library, key)
    session.do(set_claim("model_year", 1954))
    seal(session, library, key, LATER)
    session.do(set_claim("model_year", 1955))
    plain = told_of_sheet(first, data, library).plain()
    assert plain == {
        "sealed": True, "as_sealed": True, "changed": [],
        "key": {"fingerprint": key.fingerprint, "of_this_computer": True},
        "record": DEMO_ID, "version": 1, "sealed_at": AT,
        "here": {"record": True, "version": True, "same_file": True, "same_record": True, "newest_version": 2,
                 "newest_sealed": LATER, "changed_since": True},
    }  # fmt: skip
    spoilt = told_of_sheet(first[:-20] + b"x" + first[-19:], data, library).plain()
    assert (spoilt["as_sealed"], spoilt["here"]["same_file"]) == (False, False)
    assert str(spoilt["changed"][0]).startswith(f"Byte {len(first) - 20} was changed, in ")
    assert told_of_sheet(first, data, None).plain()["here"] is None
