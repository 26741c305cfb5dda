"""The model year by the parts, as it stands on the seller's copy."""

import re
from io import BytesIO

import pytest
from reportlab.pdfgen.canvas import Canvas

from inspector.judgement.judge import judge
from inspector.judgement.year_words import chart_years, signed
from inspector.record.claim import Claim
from inspector.sheet import blocks as b
from inspector.sheet.draw import years as drawing
from inspector.sheet.draw.kit import CONTENT, fonts
from inspector.sheet.pdf import as_pdf
from inspector.sheet.text import as_text
from tests.sheet import demo, made, read
from tests.sheet.test_pdf import assert_inside


@pytest.fixture(scope="module")
def whole():
    return demo.sheet()


@pytest.fixture(scope="module")
def years(whole):
    return demo.block(whole, b.YearsBlock)


def made_block(rows, first=1950, last=1958, claimed=1953):
    return b.YearsBlock("Years", "Years: 1953 alone.", (), first, last, claimed, "claimed", tuple(rows))


def code(row, **more):
    """What is drawn for one row of a chart."""
    fonts()
    canvas = Canvas(BytesIO())
    line = drawing._Line(row, drawing.Scale(made_block([row], **more)))
    line.wrapOn(canvas, CONTENT, 1e6)
    line.drawOn(canvas, 0, 0)
    return "\n".join(canvas._code)


def test_the_sentence_and_the_chart_say_the_same(years):
    judged = judge(*demo.machine()).years
    assert years.sentence == str(judged.sentence)
    rows = {row.name: row for row in years.rows}
    assert set(rows) == {own.assembly.value for own in judged.by_assembly}
    for own in judged.by_assembly:
        covered = {y for span in rows[own.assembly.value].spans for y in range(span.first, span.last + 1)}
        assert covered == set(own.years or own.left)
        assert (rows[own.assembly.value].years == "nothing shown") == (not covered)
        assert ("odd one out" in rows[own.assembly.value].note) == own.odd


def test_what_hangs_on_a_figure_is_a_condition_in_words(years):
    (frame,) = (row for row in years.rows if row.name == "frame")
    assert {span.kind for span in frame.spans} == {"condition"}
    assert frame.note == "1952 if figure 5 is 3; 1953 if figure 5 is 8"


def test_where_nothing_decides_which_part_is_odd_the_chart_does_not_either():
    record = demo.read_as(engine="6HE 15842", gearbox="G 21140").model_copy(update={"findings": ()})
    assert len(judge(demo.machine()[0], record).years.together.odd) == 2
    rows = demo.block(demo.sheet(record), b.YearsBlock).rows
    assert {row.name: row.note for row in rows if row.note} == dict.fromkeys(
        ("engine", "gearbox"), "odd one out, or another is"
    )


def test_what_was_set_aside_the_youngest_part_groups_and_changes_by_serial_are_told(years):
    judged = judge(*demo.machine()).years
    for sentence in (judged.claim_sentence, judged.youngest_sentence, judged.groups_sentence, *judged.running):
        assert str(sentence) in years.lines
    assert str(judged.assumption) in years.reasons
    assert len(judged.running) > 0


def test_the_weight_of_every_year_stands_with_what_was_assumed(years):
    weight = judge(*demo.machine()).years.weight
    head, *kinds = years.table
    assert [int(year) for year in head[1]] == sorted(weight.decibans)
    for (_, cells), weights in zip(kinds, (weight.decibans, weight.halved, weight.doubled), strict=True):
        assert list(cells) == [signed(weights[int(year)]) for year in head[1]]
    assert str(weight.assumption) in years.weight


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_text_and_paper_say_the_same(whole, years, paper):
    pieces = [years.sentence, *years.lines, " ".join(years.reasons), years.weight[0], " ".join(years.weight[1:])]
    pieces += [cell for _, cells in years.table for cell in cells]
    pieces += [part for row in years.rows for part in (row.name, row.years, row.note)]
    pieces = [" ".join(piece.split()) for piece in pieces]
    text, data = " ".join(as_text(whole).split()), as_pdf(whole, paper)
    flat = read.body(data, (whole.title, whole.foot, *whole.stamp))
    assert [piece for piece in pieces if piece not in text] == []
    assert [piece for piece in pieces if piece not in flat] == []
    assert_inside(data, {"A4": 297.0, "Letter": 279.4}[paper])  # ISO 216; ANSI/ASME Y14.1


def test_without_evidence_there_is_a_sentence_and_no_chart():
    found = demo.block(made.sheet(made.record(findings=(), readings=(), photographs=())), b.YearsBlock)
    assert (found.sentence, found.rows, found.table) == ("Years: nothing shows one firmly yet.", (), ())
    assert found.weight[0] == "Weight of evidence: nothing to weigh yet."


def test_without_a_claim_no_year_is_ruled():
    found = demo.block(demo.sheet(demo.machine()[1].model_copy(update={"claim": Claim()})), b.YearsBlock)
    assert found.claimed is None
    assert drawing.Scale(found).claimed is None
    assert "[" not in str(found.claimed_word)


def test_each_kind_of_bar_is_told_without_colour():
    allowed, condition, odd, none = (
        code(b.YearRow("frame", spans, "1951–53"))
        for spans in (*((b.YearSpan(1951, 1953, kind),) for kind in ("allowed", "condition", "odd")), ())
    )
    assert "[2.6 1.6] 0 d" in condition
    assert "[1 2.4] 0 d" in none
    assert "W*" in odd.split()
    assert "W*" not in f"{allowed} {condition} {none}".split()
    assert len({allowed, condition, odd, none}) == 4


def test_the_claimed_year_is_ruled_through_every_row():
    scale = drawing.Scale(made_block([]))
    for spans in ((), (b.YearSpan(1955, 1956, "odd"),)):
        upright = re.findall(r"n ([\d.]+) 0 m \1 ([\d.]+) l S", code(b.YearRow("frame", spans, "")))
        assert [float(x) for x, _ in upright] == pytest.approx([scale.x(1953), scale.x(1954)], abs=0.001)
        assert [float(high) for _, high in upright] == pytest.approx([drawing.ROW] * 2, abs=0.001)
    assert drawing.Scale(made_block([], claimed=1990)).claimed is None


def test_the_years_lie_side_by_side_over_the_whole_room():
    scale = drawing.Scale(made_block([]))
    assert scale.x(1950) == drawing.NAMES
    assert scale.x(1959) == pytest.approx(drawing.NAMES + drawing.BARS)
    assert scale.between(b.YearSpan(1940, 1945, "allowed")) == (drawing.NAMES, drawing.NAMES)
    assert scale.between(b.YearSpan(1940, 1950, "allowed")) == (scale.x(1950), scale.x(1951))


def test_a_long_profile_shows_only_what_bars_and_claim_reach():
    ends = (1951, 1953)
    assert chart_years(range(1901, 1999), 1960, ends) == (1950, 1961)
    assert chart_years(range(1901, 1999), None, ends) == (1950, 1954)
    assert chart_years(range(1901, 1999), None, []) == (1901, 1998)
    assert chart_years(range(1950, 1959), 1960, ends) == (1950, 1958)


def test_long_names_notes_and_a_hundred_years_stay_on_the_page():
    rows = [
        b.YearRow("an assembly whose name is far too long for its column " * 2,
                  (b.YearSpan(1901 + n, 1990 - n, "condition"),), "1901–1990, 1992, 1994–96",
                  "1901 if figure 5 is 3 and figure 7 is 1; " * 6)
        for n in range(40)
    ]  # fmt: skip
    block = made_block(rows, 1901, 1998, 1953)
    sheet = made.sheet(made.record(0))
    blocks = tuple(block if isinstance(one, b.YearsBlock) else one for one in sheet.blocks)
    data = as_pdf(type(sheet)(**{name: getattr(sheet, name) for name in sheet.__slots__} | {"blocks": blocks}))
    assert_inside(data)
    assert read.flat(data).count("1901 if figure 5 is 3 and figure 7 is 1;") == 240
