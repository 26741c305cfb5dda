"""What papers quote is compared with the metal; a slip of the pen is told as that slip, and nobody is blamed."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.lookalikes import ALIKE, alike
from inspector.judgement.papers import compare_papers, inquiries_said, years_kept_apart
from inspector.judgement.relations import Stand
from inspector.record.claim import Claim, Inquiry, Paper, Quoted
from inspector.record.reading import Reading, figures_of
from inspector.record.words import HowRead, NumberState, PaperState
from tests.judgement.make import profile, record
from tests.judgement.test_relations import NEVER_SAID, PLACES, readings_of

BLAME = ("forged", "false", "wrong", "lie", "error", "mistake", "cheat", *NEVER_SAID)


def compared(*papers, **numbers):
    return compare_papers(profile(place=PLACES), record(readings=tuple(readings_of(numbers)), papers=papers))


def paper(*numbers, place="frame", state=PaperState.ORIGINAL, key="p"):
    return Paper(
        id=key, name="Registration book", state=state, quoted=tuple(Quoted(number=n, place=place) for n in numbers)
    )


def against(frame, quoted, **more):
    (found,) = compared(paper(quoted), frame=frame, **more)
    return found


@pytest.mark.parametrize(
    ("frame", "quoted", "slip", "sentence"),
    [
        ("6H 15842", "15842", "dropped prefix", "one slip: the paper leaves out 6H in front"),
        ("DU24875", "24875", "dropped prefix", "one slip: the paper leaves out DU in front"),
        ("H11512", "11512", "dropped prefix", "one slip: the paper leaves out H in front"),
        ("T160 KK06100", "KK06100", "dropped prefix", "one slip: the paper leaves out T160 in front"),
        ("6H 15842", "6H 15B42", "look-alike",
         "one slip: figure 5 was read as 8 and the paper has B, which look alike"),
        ("6H 15842", "GH 15842", "look-alike",
         "one slip: figure 1 was read as 6 and the paper has G, which look alike"),
        ("D10726", "O10726", "look-alike", "one slip: figure 1 was read as D and the paper has O, which look alike"),
        ("6H 15842", "6H 15482", "swapped neighbours",
         "one slip: figures 5 and 6 stand the other way round on the paper"),
        ("6H 15842", "H6 15842", "swapped neighbours",
         "one slip: figures 1 and 2 stand the other way round on the paper"),
        ("6H 15842", "6H 1542", "missing figure", "one slip: the paper leaves out figure 5 (8)"),
        ("6H 15882", "6H 1582", "missing figure", "one slip: the paper leaves out figure 5 or 6 (8)"),
        ("6H 15842", "H 15842", "missing figure", "one slip: the paper leaves out figure 1 (6)"),
        ("6H 15842", "6H 158742", "figure too many", "one slip: the paper has one figure more: its figure 6 (7)"),
        ("6H 15842", "6H 15842 X", "figure too many", "one slip: the paper has one figure more: its figure 8 (X)"),
        ("6H 15842", "6H 158842", "figure too many",
         "one slip: the paper has one figure more: its figure 5 or 6 (8)"),
    ],
)  # fmt: skip
def test_one_slip_is_described_as_exactly_that_slip(frame, quoted, slip, sentence):
    found = against(frame, quoted)
    assert (found.stand, found.slip, str(found.sentence)) == (Stand.SLIP, slip, sentence)
    assert "Such a slip is easily made; whoever keeps the papers can say." in [str(r) for r in found.reasons]


@pytest.mark.parametrize("quoted", ["6H 15842", "6h15842", "6H-15842", " 6H 158 42 "])
def test_a_number_written_otherwise_is_the_same_number(quoted):
    found = against("6H 15842", quoted)
    assert (found.stand, found.slip, str(found.sentence)) == (Stand.AGREE, "", "agree as read")
    assert (found.paper, found.name, found.quoted, found.place, found.place_name) == (
        "p", "Registration book", quoted, "frame", "Frame number",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("frame", "quoted", "sentence"),
    [
        ("6H 15842", "6H 15142", "disagree as read: figure 5 was read as 8 and the paper has 1"),
        ("6H 15842", "6H 95847", "disagree as read: figure 3 was read as 1 and the paper has 9, figure 7 was read as 2"
         " and the paper has 7"),
        ("6H 15842", "6H 99999", "disagree as read: the frame number was read as 6H 15842"),
        ("6H 15842", "ABC", "disagree as read: the frame number was read as 6H 15842"),
        ("NC00100 T120R", "NC00100", "disagree as read: the paper leaves out T120R behind"),
        ("6H 15[83]42", "6H 15142", "disagree as read: figure 5 was read as 3 or 8 and the paper has 1"),
    ],
)  # fmt: skip
def test_anything_else_is_a_difference_in_plain_words(frame, quoted, sentence):
    found = against(frame, quoted)
    assert (found.stand, found.slip, str(found.sentence)) == (Stand.DISAGREE, "", sentence)


@pytest.mark.parametrize(
    ("frame", "quoted", "stand", "sentence"),
    [
        ("6H 15[83]42", "6H 15842", Stand.AGREE_IF, "agree if figure 5 is 8"),
        ("6H 15?42", "6H 15842", Stand.AGREE_IF, "agree if figure 5 is 8; it could not be read"),
        ("6H [17]5?42", "6H 15842", Stand.AGREE_IF,
         "agree if figure 3 is 1 and figure 5 is 8; figure 5 could not be read"),
        ("6H 15842", "6H 15?42", Stand.AGREE_IF, "agree if figure 5 is 8; it could not be read"),
        ("6H 15[83]42", "6H 15B42", Stand.SLIP,
         "one slip if figure 5 is 8: figure 5 was read as 8 and the paper has B, which look alike"),
        ("6H 15[83]42", "15842", Stand.SLIP, "one slip if figure 5 is 8: the paper leaves out 6H in front"),
        ("6H 15[83]42", "6H 15482", Stand.SLIP,
         "one slip if figure 5 is 8: figures 5 and 6 stand the other way round on the paper"),
    ],
)  # fmt: skip
def test_figures_in_doubt_make_conditions(frame, quoted, stand, sentence):
    found = against(frame, quoted)
    assert (found.stand, str(found.sentence)) == (stand, sentence)


def test_whose_figures_are_counted_is_said():
    on_metal, on_paper = against("6H 15?42", "6H 15842"), against("6H 15842", "6H 15?42")
    assert "The figures are counted on the frame number." in [str(r) for r in on_metal.reasons]
    assert "The figures are counted on the number on the paper." in [str(r) for r in on_paper.reasons]


def test_too_little_read_or_quoted_is_not_compared():
    assert str(against("6H ?????", "15842").sentence) == "cannot compare: too little of the frame number was read"
    assert str(against("6H 15842", "???").sentence) == "cannot compare: no figure on the paper can be read"


def test_parts_in_another_order_are_the_same_number():
    found = against("NC00100 T120R", "T120R NC00100")
    assert found.stand is Stand.AGREE
    assert "Its parts stand in another order than on the metal." in [str(r) for r in found.reasons]


@pytest.mark.parametrize(
    ("state", "why"),
    [
        (NumberState.BLANK, "there is no number where the frame number would be"),
        (NumberState.COVERED, "the frame number cannot be seen"),
        (NumberState.GROUND, "the frame number is ground or filed away"),
        (NumberState.NOT_LOOKED, "the frame number was not looked for"),
    ],
)
def test_where_the_metal_was_not_read_the_reason_is_the_answer(state, why):
    found = against(state, "6H 15842")
    assert (found.stand, str(found.sentence)) == (Stand.CANNOT, f"cannot compare: {why}")


@pytest.mark.parametrize(
    ("how", "words"),
    [
        (HowRead.PHOTOGRAPH, "read from a photograph"),
        (HowRead.PAPER, "read from paper"),
        (HowRead.TOLD, "told, not read"),
    ],
)
def test_a_number_not_read_from_the_metal_carries_that_in_its_line(how, words):
    assert str(against(("6H 15842", how), "6H 15842").sentence) == f"agree as read (frame number {words})"


def test_a_copy_and_a_paper_only_told_of_are_said_so():
    copy, told = compared(
        paper("6H 15842", state=PaperState.COPY), paper("6H 15842", state=PaperState.TOLD), frame="6H 15842"
    )
    assert str(copy.sentence) == "agree as read (the paper is a copy)"
    assert str(told.sentence) == "agree as read (the paper was told of and not seen)"
    assert (copy.state, told.state) == (PaperState.COPY, PaperState.TOLD)


def test_a_paper_is_no_original_before_somebody_said_so():
    book = Paper(id="p", name="Book", quoted=(Quoted(number="6H 15842", place="frame"),))
    (found,) = compared(book, frame="6H 15842")
    assert str(found.sentence) == "agree as read (whether the paper is the original is not said)"


@pytest.mark.parametrize("quoted", [(), ("", "  ")])
def test_a_paper_that_quotes_no_number_is_not_tied_to_this_machine(quoted):
    (found,) = compared(paper(*quoted), frame="6H 15842")
    assert (found.stand, str(found.sentence), found.place) == (Stand.CANNOT, "not tied to this machine", "")


def test_several_numbers_of_one_paper_are_compared_each():
    both = Paper(id="p", name="Title", quoted=(Quoted(number="6H 15842", place="frame"),
                                               Quoted(number="6HE 15843", place="engine")))  # fmt: skip
    found = compared(both, frame="6H 15842", engine="6HE 15842")
    assert [(f.place, f.stand) for f in found] == [("frame", Stand.AGREE), ("engine", Stand.DISAGREE)]


def test_numbers_still_to_be_entered_keep_their_place_among_the_others():
    found = compared(paper("", "6H 15842"), frame="6H 15842")
    assert [(f.stand, str(f.sentence)) for f in found] == [
        (Stand.CANNOT, "no number entered"), (Stand.AGREE, "agree as read"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("quoted", "place", "stand"),
    [
        ("6HE 15842", "engine", Stand.AGREE),
        ("G 16077", "gearbox", Stand.AGREE),
        ("6HE 15B42", "engine", Stand.SLIP),
        ("6HE 99842", "engine", Stand.DISAGREE),
        ("6H 15842", "frame", Stand.AGREE),
    ],
)
def test_where_the_paper_does_not_say_which_number_the_nearest_place_is_named(quoted, place, stand):
    numbers = {"frame": "6H 15842", "engine": "6HE 15842", "gearbox": "G 16077", "casting": quoted, "fork": quoted}
    (found,) = compared(paper(quoted, place=""), **numbers)
    assert (found.place, found.stand) == (place, stand)
    assert f"comes nearest to the {found.place_name.lower()}." in str(found.reasons[0])


def test_places_as_near_as_the_nearest_are_named_too():
    (found,) = compared(paper("DU24875", place=""), frame="DU24875", engine="DU24875")
    assert (found.place, found.stand) == ("frame", Stand.AGREE)
    assert "As near: engine number." in [str(r) for r in found.reasons]


def test_nothing_read_leaves_nothing_to_compare():
    (found,) = compared(paper("6H 15842", place=""))
    assert (found.stand, found.place) == (Stand.CANNOT, "")
    (unknown,) = compared(paper("6H 15842", place="nowhere"), frame="6H 15842")
    assert unknown.stand is Stand.CANNOT


def test_brackets_that_make_no_sense_are_compared_as_they_stand():
    assert against("6H 15842", "6H 15[8").stand is Stand.DISAGREE


numbers = st.text("0123456789ABDH", min_size=5, max_size=9).filter(lambda n: any(c.isdigit() for c in n))


@settings(deadline=None)
@given(numbers, st.data())
def test_every_slip_made_on_purpose_is_found(number, data):
    at = data.draw(st.integers(0, len(number) - 1))
    kind = data.draw(st.sampled_from(["missing", "extra", "swapped", "alike"]))
    sign = data.draw(st.sampled_from("0123456789XYZ"))
    if kind == "missing":
        quoted = number[:at] + number[at + 1 :]
    elif kind == "extra":
        quoted = number[:at] + sign + number[at:]
    elif kind == "swapped":
        quoted = number[:at] + number[at + 1 : at + 2] + number[at] + number[at + 2 :]
    else:
        pair = data.draw(st.sampled_from(ALIKE))
        number = number[:at] + pair.one + number[at + 1 :]
        quoted = number[:at] + pair.other + number[at + 1 :]
    found = against(number, quoted)
    assert found.stand is (Stand.AGREE if number == quoted else Stand.SLIP)
    if kind == "alike":
        assert found.slip == "look-alike"
        assert alike(pair.one, pair.other)


@settings(deadline=None)
@given(st.text("6H158?[]42B ", max_size=9), st.text("6H1584?[]2B ", max_size=9), st.sampled_from(["", "frame", "x"]))
def test_no_sentence_blames_anybody(frame, quoted, place):
    try:
        figures_of(frame)
    except ValueError:
        return
    for found in compared(paper(quoted, place=place), frame=frame, engine="6HE 15842"):
        words = " ".join(map(str, (found.stand.value, found.sentence, *found.reasons))).casefold()
        assert [word for word in BLAME if word in words.split() or (word in NEVER_SAID and word in words)] == []


def with_claim(**claim):
    return [str(s) for s in years_kept_apart(record().model_copy(update={"claim": Claim(**claim)}))]


def test_the_four_kinds_of_year_stand_apart_also_where_nothing_is_stated():
    assert with_claim() == [
        "Model year claimed: not stated.", "Built: not stated.", "First registered: not stated.",
        "Year on the title: not stated.",
    ]  # fmt: skip
    assert with_claim(model_year=1953, build_date="1953", first_registration="14 March 1953.", title_year=1953) == [
        "Model year claimed: 1953.", "Built: 1953.", "First registered: 14 March 1953.", "Year on the title: 1953.",
    ]  # fmt: skip


def test_a_title_with_the_year_of_registration_is_said():
    told = with_claim(model_year=1953, first_registration="2 May 1955", title_year=1955)
    assert told[4:] == [
        "The title has 1955, the claim 1953: a title can carry the year of registration or of sale.",
        "The year on the title is the year of first registration.",
        "First registered in 1955; a machine can be sold before its model year begins, or years after it.",
    ]


@pytest.mark.parametrize(
    ("built", "words"),
    [
        ("October 1952, as told", "Built in 1952: a season can begin in the summer before its model year."),
        ("1950", "Built in 1950, model year 1953: one of the two needs a reason."),
        ("1953", None),
        ("1952 or 1953", None),
        ("unknown, 19520", None),
    ],
)
def test_a_build_year_is_compared_with_the_model_year(built, words):
    assert with_claim(model_year=1953, build_date=built)[4:] == ([words] if words else [])


def asked(*inquiries):
    return [str(s) for s in inquiries_said(record(inquiries=inquiries))]


def test_theft_and_lien_are_not_asked_until_somebody_did():
    assert asked() == ["Theft: not asked.", "Lien: not asked."]
    assert asked(Inquiry(id="i", about="Dating")) == ["Dating: not asked.", "Theft: not asked.", "Lien: not asked."]
    assert asked(Inquiry(id="i", about="Theft"), Inquiry(id="j", about="A lien")) == [
        "Theft: not asked.", "A lien: not asked.",
    ]  # fmt: skip


def test_what_was_asked_whom_when_and_the_reply_are_told():
    theft = Inquiry(
        id="i", about="Theft", body="Police, by phone", sent="6H 15842", date="2026-05-12", reply="Come in."
    )
    assert asked(theft)[0] == "Theft: asked Police, by phone, 2026-05-12, sent: 6H 15842; reply: Come in."
    bare = Inquiry(id="i", about="", date="2026-05-12")
    assert asked(bare)[0] == (
        "Inquiry: asked somebody not named, 2026-05-12, sent: nothing noted; reply: no reply yet."
    )


def test_readings_taken_from_the_paper_itself_are_named_as_such():
    reading = Reading(id="r", place="frame", figures=figures_of("6H 15842"), how_read=HowRead.PAPER)
    (found,) = compare_papers(profile(place=PLACES), record(readings=(reading,), papers=(paper("6H 15842"),)))
    assert str(found.sentence).endswith("(frame number read from paper)")
