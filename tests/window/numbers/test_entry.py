"""A number is written figure by figure as a person writes it, and stays what was typed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.record.reading import Figure, figures_of
from inspector.record.words import Clarity
from inspector.window.numbers import entry as writing
from inspector.window.numbers.entry import Entry, at_end, go


def written(text, entry=None):
    entry = entry or Entry()
    for letter in text:
        entry = writing.typed(entry, letter)
    return entry


def typed(entry):
    return "".join(figure.typed() for figure in entry.figures)


@pytest.mark.parametrize(
    ("keys", "kept"),
    [
        ("6H 15842", "6H 15842"),
        ("6h 15842", "6H 15842"),
        ("6H 158,342", "6H 15[83]42"),
        ("6H 15[83]42", "6H 15[83]42"),
        ("8,3,9", "[839]"),
        ("8,8", "8"),
        ("?12", "?12"),
        ("?,3", "[3]"),
        ("  1  2  ", "1 2"),
        ("[7]1", "[7]1"),
        ("[]1", "1"),
        ("1]2", "12"),
        (",1", "1"),
        ("A-1/2.3", "A-1/2.3"),
    ],
)
def test_what_is_typed_is_kept_as_it_was_meant(keys, kept):
    assert typed(written(keys)) == kept


def test_or_speaks_of_the_figure_just_written_and_writing_goes_on_behind_it():
    entry = written("15")
    entry = written("8,3", entry)
    assert (typed(entry), entry.at) == ("15[83]", 3)
    assert typed(written("42", entry)) == "15[83]42"


def test_or_speaks_of_the_figure_one_went_to():
    entry = writing.typed(go(written("15842"), 2), ",")
    assert typed(written("3", entry)) == "15[83]42"


def test_a_figure_typed_over_another_takes_its_place():
    entry = written("3", go(written("6H 15842"), 4))
    assert (typed(entry), entry.at) == ("6H 15342", 5)


def test_a_gap_is_no_figure_and_stands_once():
    entry = written("6H 15842")
    assert entry.count == 7
    assert typed(written(" ", go(entry, 2))) == "6H 15842"
    assert typed(written(" ", go(entry, 4))) == "6H 15 842"
    assert typed(written(" 9", Entry())) == "9"


def test_backspace_takes_the_gap_and_then_the_figure():
    entry = writing.back(go(written("6H 15842"), 2))
    assert (typed(entry), entry.at) == ("6H15842", 2)
    entry = writing.back(entry)
    assert (typed(entry), entry.at) == ("615842", 1)
    assert typed(writing.back(written("12"))) == "1"
    assert writing.back(Entry()) == Entry()


def test_delete_and_insert_shift_what_stands_behind():
    entry = writing.delete(go(written("6H 15842"), 2))
    assert (typed(entry), entry.at) == ("6H 5842", 2)
    entry = writing.insert(entry)
    assert (typed(entry), entry.at) == ("6H ?5842", 2)
    assert typed(written("1", entry)) == "6H 15842"
    assert writing.delete(at_end(figures_of("12"))) == at_end(figures_of("12"))


def test_no_gap_is_left_at_an_end_when_figures_go():
    assert typed(writing.delete(go(written("6 H"), 1))) == "6"
    assert typed(writing.delete(go(written("6 H"), 0))) == "H"


def test_a_whole_number_is_pasted_and_a_wrong_bracket_refused():
    entry = writing.pasted(" 6h   15[83]42\n")
    assert (typed(entry), entry.at) == ("6H 15[83]42", 7)
    with pytest.raises(ValueError, match="bracket"):
        writing.pasted("15[8342")


def test_how_well_a_figure_was_seen_can_be_said_later():
    clear = Figure(could_be=("8",))
    probable = writing.clearer(clear, Clarity.PROBABLE)
    assert probable == Figure(clarity=Clarity.PROBABLE, could_be=("8",))
    both = writing.with_other(probable, "3")
    assert both.could_be == ("8", "3")
    assert writing.clearer(both, Clarity.CLEAR) == clear
    assert writing.clearer(both, Clarity.UNREADABLE) == writing.UNREAD
    assert writing.clearer(writing.UNREAD, Clarity.CLEAR) is None
    assert writing.without(both, "8").could_be == ("3",)
    assert writing.without(writing.without(both, "8"), "3") == writing.UNREAD


ACTS = st.sampled_from([*"16HB? ,[]", "back", "delete", "insert", "left", "right"])


@given(st.lists(ACTS, max_size=40))
def test_whatever_is_pressed_the_place_is_within_the_number_and_no_figure_is_made_up(acts):
    entry, touched = Entry(), set()
    for act in acts:
        if act in ("left", "right"):
            entry = go(entry, entry.at + (1 if act == "right" else -1))
        elif len(act) > 1:
            entry = getattr(writing, act)(entry)
        else:
            touched.add(act)
            entry = writing.typed(entry, act)
        assert 0 <= entry.at <= entry.count
        assert {text for figure in entry.figures for text in figure.could_be} <= touched | {" "}
        assert writing._tidy(entry.figures) == entry.figures
    assert figures_of(typed(entry)) == entry.figures
