"""What numbers say, how they stand beside each other and the papers, as it stands on the seller's copy."""

from io import BytesIO

import pytest
from reportlab.pdfgen.canvas import Canvas

from inspector.judgement.judge import judge
from inspector.judgement.relations import Stand
from inspector.record.claim import Claim, Inquiry, Paper, Quoted
from inspector.record.reading import Reading, figures_of
from inspector.record.words import HowRead, NumberState, StampSight
from inspector.sheet import blocks as b
from inspector.sheet.draw.shapes import Figures
from inspector.sheet.draw.stands import PIECES, Lines
from inspector.sheet.pdf import as_pdf
from inspector.sheet.standing import sign_of
from inspector.sheet.text import as_text
from tests.sheet import demo, made, read
from tests.sheet.test_pdf import assert_inside

NEVER = ("authentic", "genuine", "original numbers", "certified", "not stolen", "safe to ride", "market value")
CODED = "1HGCM82633A004352"  # an invented reading of 17 characters, used only for its length and characters


@pytest.fixture(scope="module")
def whole():
    return demo.sheet()


def rows(sheet):
    return {row.place: row for row in demo.block(sheet, b.NumbersBlock).rows}


def standings(sheet):
    return demo.block(sheet, b.BesideBlock).rows


def test_each_possibility_stands_with_its_condition_and_source_first_guess_first(whole):
    first, second = rows(whole)["Frame number"].reads
    assert first.words == "15 842, if figure 5 is 8: 1953 model, built October 1952"
    assert second.words == "15 342, if figure 5 is 3: 1952 model, built August 1952"
    assert [(c.grade, c.words) for c in first.sources] == [(3, "factory list, Illustrated spares list, 1953 models")]


def test_the_other_guess_turned_round_turns_the_order():
    first, _ = rows(demo.sheet(demo.read_as(frame="6H 15[38]42")))["Frame number"].reads
    assert first.words.startswith("15 342, if figure 5 is 3")


def test_many_possibilities_are_told_as_what_they_have_in_common(whole):
    (only,) = rows(whole)["Fork number"].reads
    assert only.words == "10 numbers remain, of the model years 1950–55"


def test_a_number_outside_every_block_names_the_nearest_rule():
    row = rows(demo.sheet(demo.read_as(frame="6H 99999")))["Frame number"]
    assert row.reads == ()
    assert "Nearest is" in row.says


def test_a_place_without_a_rule_says_so():
    row = rows(made.sheet(made.record(readings=[{"id": "r", "place": "elsewhere", "figures": figures_of("12")}])))
    assert row["elsewhere"].says == "No rule of this place is known."


@pytest.mark.parametrize("state", [NumberState.BLANK, NumberState.COVERED, NumberState.GROUND, NumberState.NOT_LOOKED])
def test_a_place_without_figures_says_what_was_found_there(state):
    _, record = demo.machine()
    reading = Reading(id="frame", place="frame", state=state, by="inspector")
    sheet = demo.sheet(record.model_copy(update={"readings": (reading, demo.read_as(engine="6HE 15842").readings[0])}))
    row = rows(sheet)["Frame number"]
    assert (row.says, row.reads, row.cells) == (state.value, (), ())
    (pair,) = (one for one in standings(sheet) if one.about == "Frame number and engine number")
    assert pair.sign == "cannot compare"
    assert pair.detail == ""


@pytest.mark.parametrize(
    ("figures", "said"), [("6HE 15842", "A. Teasel did not say how it was read; every figure clear"),
                          ("", "noted by A. Teasel; no figure noted")],
)  # fmt: skip
def test_how_a_number_was_read_is_not_told_where_nobody_said_it(figures, said):
    _, record = demo.machine()
    reading = Reading(id="engine", place="engine", figures=figures_of(figures), by="inspector",
                      how_read=HowRead.NOT_SAID)  # fmt: skip
    row = rows(demo.sheet(record.model_copy(update={"readings": (reading,)})))["Engine number"]
    assert row.how == said


def test_cleaning_names_whose_leave_and_says_where_none_is_recorded(whole):
    assert "The engine number was cleaned with leave of R. Quill." in rows(whole)["Engine number"].more
    reading = demo.read_as(engine="6HE 15842").readings[0].model_copy(update={"cleaned": True})
    _, record = demo.machine()
    bare = rows(demo.sheet(record.model_copy(update={"readings": (reading,)})))["Engine number"]
    assert "The engine number was cleaned; with whose leave is not recorded." in bare.more


def test_a_stamping_of_which_nothing_could_be_seen_says_so():
    sights = dict.fromkeys(
        ("pad surface", "machining marks", "line-up", "spacing", "depth", "shape of figures", "paint in figures",
         "overstrike"), StampSight.CANNOT_SEE,
    )  # fmt: skip
    reading = demo.read_as(engine="6HE 15842").readings[0].model_copy(update={"stamping": sights})
    _, record = demo.machine()
    row = rows(demo.sheet(record.model_copy(update={"readings": (reading,)})))["Engine number"]
    assert "Stamping of the engine number: nothing of it could be seen." in row.more


def test_two_readings_of_one_place_each_keep_their_own_words():
    first, second = demo.read_as(engine="6HE 15842").readings[0], demo.read_as(engine="6HE 15843").readings[0]
    second = second.model_copy(update={"id": "again", "cleaned": True})
    _, record = demo.machine()
    sheet = demo.sheet(record.model_copy(update={"readings": (first, second)}))
    found = [row for row in demo.block(sheet, b.NumbersBlock).rows if row.cells]
    assert [any("cleaned" in more for more in row.more) for row in found] == [False, True]


def test_every_standing_is_there_and_those_that_raise_a_question_come_first(whole):
    judged = judge(*demo.machine())
    assert len(standings(whole)) == len(judged.standings)
    assert [row.says for row in standings(whole)] == [str(one.sentence) for one in judged.standings]
    raising = [one.raises for one in judged.standings]
    assert raising == sorted(raising, reverse=True)
    assert any(raising)


def test_what_was_compared_has_its_rule_and_the_grade_of_its_source(whole):
    (pair,) = (row for row in standings(whole) if row.about == "Frame number and engine number")
    assert (pair.sign, pair.says, pair.grade) == ("agree if", "agree if figure 5 is 8", 3)
    assert "As built both carried the same serial with other letters, 1950–1954" in pair.detail
    assert "Illustrated spares list, 1953 models, page 9" in pair.detail
    assert "by me" not in as_text(whole)


def test_with_nothing_read_nothing_is_compared():
    sheet = demo.sheet(demo.read_as())
    assert all(row.says == "not read" for row in demo.block(sheet, b.NumbersBlock).rows)
    beside = demo.block(sheet, b.BesideBlock)
    assert (beside.rows, beside.note) == ((), "No number was read, so nothing is compared.")
    assert "No number was read" in read.flat(as_pdf(sheet))


def test_every_paper_stands_with_what_it_quotes_and_a_slip_is_named(whole):
    found = {row.about: row for row in demo.block(whole, b.PapersBlock).rows}
    book = found["Quotes 6H 15B42, beside the frame number"]
    assert book.sign == "one slip"
    assert "the paper has B, which look alike" in book.says
    assert found["Quotes no number"].says == "not tied to this machine"
    assert found["Quotes 6HE 15842, beside the engine number"].says == "agree as read"
    assert [row.about for row in found.values() if not row.sign] == [p.name for p in demo.machine()[1].papers]


def test_a_number_of_which_nothing_tells_the_place_is_not_given_one():
    papers = (Paper(id="b", name="Bill", quoted=(Quoted(number="X99"),)),)
    sheet = made.sheet(made.record(papers=papers, readings=()))
    _, row = demo.block(sheet, b.PapersBlock).rows
    assert (row.about, row.sign) == ("Quotes X99", "cannot compare")


def test_theft_and_lien_say_not_asked_until_somebody_asks():
    text = as_text(made.sheet(made.record(inquiries=())))
    assert "Theft: not asked" in text
    assert "Lien: not asked" in text
    asked = made.record(inquiries=[Inquiry(id="t", about="Theft", body="Police", reply="No answer yet.")])
    assert "Theft: not asked" not in as_text(made.sheet(asked))


def test_kinds_of_year_that_differ_are_explained_beside_the_claim():
    claim = Claim(model_year=1953, title_year=1957, first_registration="4 May 1957")
    said = [str(row.said) for row in demo.block(made.sheet(made.record(claim=claim)), b.ClaimBlock).rows]
    assert "The year on the title is the year of first registration." in said


def test_a_number_of_17_characters_has_a_part_of_its_own():
    assert not any(isinstance(one, b.SeventeenBlock) for one in made.sheet().blocks)
    readings = (Reading(id="r", place="frame", figures=figures_of(CODED)),)
    sheet = made.sheet(made.record(readings=readings, claim=Claim(model_year=1983, market="USA")))
    found = demo.block(sheet, b.SeventeenBlock)
    assert found.rows[0].about == f"Frame {CODED}"
    assert "check digit" in found.rows[0].says
    assert found.rows[0].detail.startswith("What the check digit cannot show:")
    assert "49 CFR 565.15" in found.note
    data = as_pdf(sheet)
    assert_inside(data)
    assert " ".join(found.rows[0].says.split()) in read.flat(data)


def test_an_open_question_leaves_to_the_finding_what_its_note_tells(whole):
    _, record = demo.machine()
    asked = " ".join(f"{row.said} {row.small}" for row in demo.block(whole, b.QuestionsBlock).rows)
    notes = [f.note.split(". ")[0] for f in record.findings if len(f.note) > 40]
    assert len(notes) > 20
    assert [note for note in notes if note in asked] == []
    numbers = {e.name: e.number for e in demo.block(whole, b.FindingsBlock).entries}
    assert f"Carburettor: doubt, pattern part (likely). Finding {numbers['Carburettor']}." in asked


def test_one_next_step_is_not_told_twice_for_one_item(whole):
    told = [row for row in demo.block(whole, b.QuestionsBlock).rows if "Prop stand" in str(row.said)]
    assert len(told) == 2
    assert [bool(row.small) for row in told] == [True, False]


def pieces(sheet):
    """Everything that numbers, standings and papers say, piece by piece."""
    numbers = demo.block(sheet, b.NumbersBlock)
    yield numbers.note
    for row in numbers.rows:
        yield from (row.says, row.how, *row.more)
        for one in row.reads:
            yield from (one.words, one.note, *(source.words for source in one.sources))
    for kind in (b.BesideBlock, b.PapersBlock):
        for row in demo.block(sheet, kind).rows:
            yield from (f"{row.about}: {row.says}", row.detail)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_text_and_paper_say_the_same(whole, paper):
    text = as_text(whole)
    flat = read.body(as_pdf(whole, paper), (whole.title, whole.foot, *whole.stamp))
    wanted = [" ".join(piece.split()) for piece in pieces(whole) if piece]
    assert len(wanted) > 50
    assert [piece for piece in wanted if piece not in " ".join(text.split())] == []
    assert [piece for piece in wanted if piece not in flat] == []


def test_the_whole_sheet_says_no_never_word(whole):
    said = " ".join((as_text(whole) + read.flat(as_pdf(whole))).casefold().split())
    assert [word for word in NEVER if word in said] == []


def drawn(piece, width=200.0):
    canvas = Canvas(BytesIO())
    piece.wrapOn(canvas, width, 1e6)
    piece.drawOn(canvas, 0, 0)
    return "\n".join(canvas._code)


def test_each_way_to_stand_has_lines_of_its_own():
    codes = {sign: drawn(Lines(sign, 11)) for sign in {sign_of(stand) for stand in Stand}}
    assert len(set(codes.values())) == len(codes) == len(Stand) - 1
    assert set(codes) == {*PIECES, "disagree as read"}
    assert all(" re f" in code or " re\nf" in code for code in codes.values())


def test_a_figure_has_a_line_below_that_says_how_it_was_seen():
    clear, probable, unreadable = (
        drawn(Figures((b.Cell("8", clarity, others),)))
        for clarity, others in (("clear", ""), ("probable", "or 3"), ("unreadable", ""))
    )
    assert "[2.6 1.3] 0 d" in probable
    assert "[2.6 1.3] 0 d" not in clear + unreadable
    assert clear.count(" l S") == 1
    assert unreadable.count(" l S") == 4


def test_what_else_a_figure_could_be_stands_below_it_where_there_is_room():
    cells = tuple(b.Cell(figure, "probable", "or 1 2 3") for figure in "678")
    high = Figures(cells)
    low = Figures((b.Cell("6", "clear"),))
    assert drawn(high).count("BT") == 4
    drawn(low)
    assert high.height > low.height


UNBROKEN = "N" * 480


def test_whatever_is_entered_stays_on_the_page():
    profile, record = demo.machine()
    readings = tuple(
        Reading(id=f"r{n}", place=place.id, figures=figures_of("[0123456789]?" * 60), by="inspector", note=UNBROKEN)
        for n, place in enumerate(profile.places)
    )
    papers = tuple(Paper(id=f"p{n}", name=UNBROKEN, quoted=(Quoted(number=UNBROKEN),) * 3) for n in range(3))
    sheet = demo.sheet(record.model_copy(update={"readings": readings, "papers": papers, "findings": ()}))
    for paper, high in (("A4", 297.0), ("Letter", 279.4)):  # ISO 216; ANSI/ASME Y14.1
        assert_inside(as_pdf(sheet, paper), high)
    assert "Stamping of the frame number: not looked at." in as_text(sheet)
