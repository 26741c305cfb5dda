"""Look-alikes are offered with who names them; what could have been made from what runs one way only."""

import pytest

from inspector.judgement.lookalikes import (
    ALIKE,
    LETTERING,
    MADE,
    PAPER,
    PLATES,
    READER,
    REASONED,
    alike,
    alterations,
    sources_of,
    suggestions,
)

# Manual of an industrial character reader (5370-OCR2), page 2-8.
BY_READER = ("0O", "1I", "2Z", "5S", "8B")
# Default groups of a number-plate reader, from its administrator's guide.
BY_PLATES = ("0O", "0D", "0Q", "OD", "OQ", "DQ", "1I", "2Z", "5S", "8B", "6G")
# Confused pairs listed in a paper on reading number plates, as quoted by a citation index.
BY_PAPER = (
    "O0", "PB", "Z2", "S5", "38", "B8", "PR", "DO", "1I", "QO", "CG", "A4", "KX", "FE", "68", "53", "58", "08", "39",
    "49", "VW", "XY", "VU",
)  # fmt: skip
# History of German number-plate lettering, en.wikipedia.org/wiki/FE-Schrift: strokes added.
BY_LETTERING = ("PR", "PB", "38", "LE", "FE")


@pytest.mark.parametrize(
    ("pairs", "source"),
    [(BY_READER, READER), (BY_PLATES, PLATES), (BY_PAPER, PAPER)],
    ids=["reader", "plates", "paper"],
)
def test_every_pair_of_each_list_is_there_with_its_source_both_ways(pairs, source):
    named = {frozenset((a.one, a.other)) for a in ALIKE if source in a.sources}
    assert named == {frozenset(pair) for pair in pairs}
    for one, other in pairs:
        assert other in suggestions(one)
        assert one in suggestions(other)
        assert alike(one, other)
        assert source in sources_of(other, one)


def test_what_more_lists_name_is_offered_first():
    assert suggestions("8")[0] == "B"
    assert set(suggestions("8")) == {"B", "3", "6", "5", "0"}
    assert suggestions("O")[0] == "0"
    assert suggestions("7") == ()


def test_small_letters_are_asked_as_capitals_and_nothing_suggests_itself():
    assert suggestions("b") == suggestions("B")
    characters = {c for pair in ALIKE for c in (pair.one, pair.other)}
    assert all(c not in suggestions(c) for c in characters)
    assert not alike("1", "9")
    assert sources_of("1", "9") == ()


def test_strokes_are_added_and_not_taken_away():
    sourced = {m.was + m.became for m in MADE if m.source == LETTERING}
    assert sourced == set(BY_LETTERING)
    assert {m.was + m.became for m in MADE if m.source == REASONED} == {"14", "17", "68", "08", "98", "CG", "CO", "IL"}
    assert alterations("8") == ("3", "6", "0", "9")
    assert alterations("r") == ("P",)
    assert alterations("3") == alterations("P") == ()
    made = {(m.was, m.became) for m in MADE}
    assert not any((became, was) in made for was, became in made)
