"""A sentence is kept apart from its values until somebody shows it."""

import pytest

from inspector.texts import Say, say, tr, trn


def test_fields_are_filled_and_a_text_without_values_stands_as_it_is():
    assert tr("item {n} of {all}", n=3, all=9) == "item 3 of 9"
    assert tr("a brace { stands") == "a brace { stands"


def test_a_sentence_may_hold_a_sentence():
    inner = say("rim {state}", state="cracked")
    assert tr(say("{item}: {words}.", item="Front wheel", words=inner)) == "Front wheel: rim cracked."


def test_values_may_carry_any_name():
    assert tr("{text} and {template}", text=1, template=2) == "1 and 2"
    assert str(say("{text} and {template}", text=1, template=2)) == "1 and 2"


@pytest.mark.parametrize(("count", "words"), [(0, "0 findings"), (1, "1 finding"), (2, "2 findings")])
def test_one_and_many_are_told_apart(count, words):
    assert trn("{count} finding", "{count} findings", count) == words


def test_what_people_typed_is_never_read_as_a_field():
    assert tr("{note}", note="{oops} {0}") == "{oops} {0}"


def test_equal_sentences_are_equal():
    assert say("{n}", n=1) == Say("{n}", {"n": 1})
    assert hash(say("{n}", n=1)) == hash(say("{n}", n=1))
