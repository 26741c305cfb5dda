"""A number that no rule reads says which it came nearest and how; a number that one reads is told in a sentence."""

import pytest

from inspector.judgement.decode import decode
from inspector.judgement.decoded_words import answers, decoded_lines, decoded_words, grouped
from inspector.judgement.judge import judge
from inspector.record.reading import Reading, figures_of
from tests.judgement.make import profile, record
from tests.judgement.test_decode import CODE, LEAD, OPEN, PLAIN, SEASON, SERIAL, YEARS, block, place, read, rule

DU = {**rule({**LEAD, "text": "DU"}, OPEN, serial="serial", range=[
    block(101, 5824, 1963), block(5825, 90282, 1964),
]), "id": "du"}  # fmt: skip


@pytest.mark.parametrize(
    ("typed", "how"),
    [
        ("DU90283", "1 above the last known number, DU90282"),
        ("DU100", "1 below the first known number, DU101"),
        ("DU0101", "a zero too many in front"),
        ("DU123456", "one figure too many"),
        ("DU1234567", "2 figures too many"),
        ("DU12", "one figure too few"),
        ("DU1X34", "figure 4, X, is no digit"),
        ("DX1234", "figure 2 is U by the rule"),
        ("DU12345*", "figure 8, *, is one too many"),
        ("1234", "DU is missing"),
        ("XY1234", "DU by the rule, where XY was read"),
        ("DU9999?", "none of the 10 numbers that it can be is in a block"),
    ],
)
def test_how_a_number_misses_the_rule_is_said(typed, how):
    near = read(typed, DU).nearest
    assert (near.rule, str(near.sentence)) == ("du", how)


@pytest.mark.parametrize(
    ("typed", "how"),
    [
        ("FC00123", "F is never used for the month of build"),
        ("AF00123", "F is never used for the model year"),
        ("A900123", "9 is not known as the model year"),
        ("AC0123", "one figure too few"),
    ],
)
def test_a_letter_outside_the_table_is_named_with_what_it_would_say(typed, how):
    """marques.md, 8: FC00123, IC00123 and AF00123 are rejected, the letter being in no table."""
    assert str(read(typed, CODE, machine=SEASON).nearest.sentence) == how


def test_a_number_outside_the_blocks_and_one_of_no_rule_are_told_apart():
    assert words("DU90283", DU).startswith("DU90283 is outside every known block. Nearest is")
    assert words("DU12", DU).startswith("DU12 follows no known rule. Nearest is")


def test_a_number_between_two_blocks_names_both_sides():
    assert str(read("6H11580", PLAIN).nearest.sentence) == (
        "between two blocks, that to 6H11570 and that from 6H11601"
    )


def test_the_rule_with_the_nearest_block_is_taken():
    late = {**PLAIN, "id": "late", "range": [block(20000, 26480, 1955)]}
    assert read("6H26481", PLAIN, late).nearest.rule == "late"
    assert read("6H15001", late, PLAIN).nearest.rule == "r"


def test_code_and_block_of_different_years_are_named():
    made = rule(YEARS, SERIAL, serial="serial", range=[block(10000, 20000, 1950), block(20001, 30000, 1951)])
    assert str(read("B15000", made).nearest.sentence) == "the code says 1951, the block of this serial 1950"


def test_letters_that_no_block_has_are_named():
    lead = {"id": "lead", "kind": "table", "codes": [{"code": "A"}, {"code": "B"}]}
    made = rule(lead, SERIAL, serial="serial", range=[block(10000, 20000, 1950, prefix="A")])
    assert str(read("B15000", made).nearest.sentence) == "no block with these letters is known"


def test_what_comes_near_no_rule_says_that_too():
    decoded = read("ÄÖÜ", DU)
    assert decoded.nearest is None
    assert str(decoded_words(profile(), decoded)) == "ÄÖÜ follows no known rule, and comes near none."


def words(typed, *rules, machine=None):
    machine = machine or profile()
    return str(decoded_words(machine, decode(machine, place(*rules), figures_of(typed))))


TOLD = rule(LEAD, SERIAL, serial="serial", range=[
    block(15180, 15399, 1952, built_from="1952-08", built_to="1952-08"),
    block(15660, 15939, 1953, built_from="1952-10", built_to="1952-10"),
    block(15940, 16419, 1953, built_from="1952-11", built_to="1953-01", sources=["book"]),
])  # fmt: skip


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("6H15842", "15 842 is in the block of the 1953 model, built October 1952 (factory list)."),
        ("6H16000", "16 000 is in the block of the 1953 model, built November 1952 to January 1953 (club register)."),
        ("6H1584?", "10 numbers remain, 15 840–15 849: 1953 model, built October 1952 (factory list)."),
        ("6H15[38]42", "15 342, if figure 5 is 3: 1952 model, built August 1952 (factory list); "
                       "or 15 842, if figure 5 is 8: 1953 model, built October 1952 (factory list)."),
        ("6H1?3??", "200 numbers remain, 15 300–15 399: 1952 model, built August 1952 (factory list); "
                    "or 16 300–16 399: 1953 model, built November 1952 to January 1953 (club register)."),
        ("6H[15]????", "980 numbers remain, "
                       "15 180–15 399, if figure 3 is 1: 1952 model, built August 1952 (factory list); "
                       "or 15 660–15 939, if figure 3 is 1: 1953 model, built October 1952 (factory list); "
                       "or 15 940–16 419, if figure 3 is 1: 1953 model, built November 1952 to January 1953 "
                       "(club register)."),
        ("6H16420", 'Nearest is "Rule": 1 above the last known number, 6H16419.'),
    ],
)  # fmt: skip
def test_a_decoded_number_is_one_sentence(typed, sentence):
    assert words(typed, TOLD).endswith(sentence)


def test_more_than_three_possibilities_are_told_by_count_and_years():
    four = rule(LEAD, SERIAL, serial="serial", range=[block(10000 * n, 10000 * n + 99, 1950 + n) for n in range(1, 5)])
    assert words("6H?????", four) == "400 numbers remain, of the model years 1951–54."


def test_a_code_without_blocks_is_told_as_typed():
    assert words("JD 00500", CODE, machine=SEASON) == "JD 00500: 1953 model, built August 1952 (factory list)."


def test_a_figure_stamped_before_the_serial_is_told_with_it():
    zero = {"id": "zero", "kind": "literal", "text": "0"}
    made = rule(zero, OPEN, serial="serial", range=[block(101, 11115, 1956, prefix="0")])
    assert words("0944", made) == "0944 is in the block of the 1956 model (factory list)."
    assert words("011115", made).startswith("011 115 is in")
    assert words("0?944", made).startswith("9 numbers remain, 01 944–09 944:")


def test_sources_that_say_the_same_are_told_together():
    both = rule(SERIAL, serial="serial", range=[block(10000, 20000, 1950), block(9000, 20000, 1950, sources=["book"])])
    decoded = read("15000", both)
    assert len(decoded.hits) == 2
    assert [one.sources for one in answers(decoded.hits)] == [("list", "book")]
    assert words("15000", both) == "15 000 is in the block of the 1950 model (factory list, club register)."


def test_the_lines_name_every_possibility_rule_and_source():
    machine = profile()
    lines = [str(line) for line in decoded_lines(machine, read("6H15[38]42", TOLD))]
    assert len(lines) == 4
    assert lines[1] == (
        '15 342: 1952 model, built August 1952. Rule "Rule"; Invented parts list (factory list). Only if figure 5 is 3.'
    )
    assert lines[3] == "Numbers that remain: 2"


@pytest.mark.parametrize(("figures", "shown"), [("1", "1"), ("1584", "1584"), ("15842", "15 842"),
                                                ("007414", "007 414"), ("1000001", "1 000 001")])  # fmt: skip
def test_figures_stand_in_groups_of_three_from_five_on(figures, shown):
    assert grouped(figures) == shown


def test_the_judgement_holds_every_reading_decoded_and_tells_it():
    rules = [{**TOLD, "id": "frame"}]
    places = [{"id": "frame", "name": "Frame number", "where": "head lug", "assembly": "frame", "rule": rules}]
    machine = profile(place=places)
    given = record(readings=(Reading(id="a", place="frame", figures=figures_of("6H15842")),
                             Reading(id="b", place="frame")))  # fmt: skip
    judged = judge(machine, given)
    assert judged.decoded["a"].years == (1953,)
    assert [str(line.decoded) for line in judged.numbers] == [
        "15 842 is in the block of the 1953 model, built October 1952 (factory list).",
        "None",
    ]
