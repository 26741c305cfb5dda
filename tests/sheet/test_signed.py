"""What stands on the signature lines of a sheet, composed and printed."""

from inspector.record.edits import apply
from inspector.record.signing import refuse, sign, sign_by_name
from inspector.sheet.pdf import as_pdf
from inspector.sheet.people import signature_block
from inspector.sheet.text import as_text
from tests.sheet import made, read

DRAWN = (((0.0, 0.0), (9.0, 4.0), (18.0, 1.0)),)


def signed(how):
    record = made.record()
    return apply(record, how(record)).record


def lines(record):
    return {one.who: one for one in signature_block(record, 1, made.MADE_AT).signatures}


def by_name(record):
    return sign_by_name(record, "seller", "R. Quill", "I was shown this.", made.MADE_AT)


def test_a_typed_name_is_told_as_typed_and_not_drawn():
    seller = lines(signed(by_name))["R. Quill, seller"]
    assert (seller.state, seller.typed) == ("name typed, not drawn, 17 May 2025, 11:20", "R. Quill")
    assert (seller.strokes, seller.statement) == ((), "I was shown this.")


def test_a_drawn_signature_and_a_refusal_are_not_told_as_typed():
    drawn = lines(signed(lambda r: sign(r, "seller", DRAWN, "", made.MADE_AT)))["R. Quill, seller"]
    assert (drawn.state, drawn.typed) == ("17 May 2025, 11:20", "")
    refused = lines(signed(lambda r: refuse(r, "seller", "", made.MADE_AT)))["R. Quill, seller"]
    assert (refused.state, refused.typed) == ("refused to sign, 17 May 2025, 11:20", "")


def test_the_block_says_that_neither_shows_whose_it_is():
    note = signature_block(made.record(), 1, made.MADE_AT).note
    assert "Neither a drawn signature nor a typed name shows whose it is." in note


def test_paper_and_text_show_the_typed_name_with_what_it_is():
    sheet = made.sheet(signed(by_name))
    for told in (" ".join(read.flat(as_pdf(sheet)).split()), " ".join(as_text(sheet).split())):
        assert "name typed, not drawn, 17 May 2025, 11:20" in told
