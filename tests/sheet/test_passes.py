"""What passed stands dense: name, what was found, the source of what was expected, who said so."""

import pytest

from inspector.record.finding import Finding
from inspector.record.words import Mark
from inspector.sheet import blocks as b
from inspector.sheet.compose import blank_sheet
from inspector.sheet.pdf import as_pdf
from tests.sheet import made, read


def passes(*findings, photographs=(), **more):
    sheet = made.sheet(made.record(0, findings=findings, photographs=photographs, **more))
    return next(one for one in sheet.blocks if isinstance(one, b.PassesBlock))


def test_the_form_found_fitted_is_followed_by_every_source_that_expects_it():
    (row,) = passes(made.found("saddle", Mark.PASS, fitted="early")).rows
    assert row.said.strong == "Saddle:"
    assert row.small == "Parts list 1953, page 62 + Road test of 1953, page 62."


def test_where_no_form_was_chosen_the_expected_forms_stand_with_their_sources():
    (row,) = passes(made.found("saddle", Mark.PASS)).rows
    assert row.small == "Expected: Saddle, early form (Parts list 1953, page 62 + Road test of 1953, page 62)."
    assert "no evidence recorded" in row.said.words


def test_one_voice_is_named_once_and_several_each_at_their_own():
    both = (made.found("saddle", Mark.PASS), made.found("headlamp", Mark.PASS))
    one = passes(*both)
    assert one.note.startswith("Said by A. Teasel, 17 May 2025.")
    assert not any("Teasel" in row.small for row in one.rows)
    other = Finding(item="barrel", by="seller", mark=Mark.PASS)
    several = passes(*both, other)
    assert "Said by" not in several.note
    assert [("Teasel" in row.small, "Quill" in row.small) for row in several.rows] == [
        (True, False), (False, True), (True, False),
    ]  # fmt: skip


def test_the_photographs_of_what_passed_are_named_by_number():
    (row,) = passes(made.found("saddle", Mark.PASS), photographs=made.photographs(3, ("saddle", ""))).rows
    assert "photographs 1, 3" in row.small


def test_several_photographs_of_one_finding_stand_abreast_below_it():
    record = made.record(0, findings=made.FINDINGS[1:2], photographs=made.photographs(4, ("fuel-tank",)))
    lines = [line for page in read.pages(as_pdf(made.sheet(record, outline=None))) for line in page.splitlines()]
    captions = [next(n for n, line in enumerate(lines) if f"photograph {p};" in line) for p in (1, 2, 3, 4)]
    reply = next(n for n, line in enumerate(lines) if "The first tank rusted through." in line)
    assert captions[0] < reply < min(captions[1:])


@pytest.mark.parametrize("sheet", [made.sheet(), blank_sheet(made.profile(), 1953, made.MADE_AT)], ids=lambda s: s.kind)
def test_no_type_is_smaller_than_nine_points(sheet):
    sizes = set()

    def see(text, matrix, text_matrix, font, size):
        if text.strip():
            sizes.add(round(size, 2))

    for page in read.reader(as_pdf(sheet)).pages:
        page.extract_text(visitor_text=see)
    assert min(sizes) == 9.0
