"""Which photographs are suggested to stand beside one another."""

from inspector.record.finding import Photograph
from inspector.record.words import Cleaning
from inspector.window.bench.pairs import is_pair, partners, same_thing


def photograph(name, **words):
    return Photograph(id=name, sha256="0" * 64, name=name, media="image/jpeg", width=4, height=3, size=9, **words)


BEFORE = photograph("before", place="frame", cleaned=Cleaning.BEFORE)
AFTER = photograph("after", place="frame", cleaned=Cleaning.AFTER)
OTHER = photograph("other", place="frame")
ELSEWHERE = photograph("elsewhere", place="engine", cleaned=Cleaning.AFTER)


def test_before_and_after_of_one_place_are_a_pair_either_way():
    assert is_pair(BEFORE, AFTER)
    assert is_pair(AFTER, BEFORE)


def test_another_place_or_the_same_state_is_no_pair():
    assert not is_pair(BEFORE, ELSEWHERE)
    assert not is_pair(AFTER, photograph("again", place="frame", cleaned=Cleaning.AFTER))
    assert not is_pair(BEFORE, OTHER)


def test_photographs_that_belong_nowhere_are_not_of_the_same_thing():
    assert not same_thing(photograph("a"), photograph("b"))


def test_the_pair_comes_first_then_the_same_place_then_the_rest():
    found = partners(BEFORE, (ELSEWHERE, OTHER, BEFORE, AFTER))
    assert [one.id for one in found] == ["after", "other", "elsewhere"]
