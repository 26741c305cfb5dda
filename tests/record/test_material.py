"""Magnet, tap and underside are noted one by one, and are evidence once they tell something."""

import pytest

from inspector.record.edits import apply
from inspector.record.material import Beneath, Magnet, Material, Sound
from inspector.record.verbs_material import see_material
from inspector.record.words import Evidence, Seen
from inspector.storage.formats import record_of, text_of
from tests.record.steps import AT, blank

TANK, ME = "tank", "inspector"


def after(record, *looks):
    for look, told in looks:
        record = apply(record, see_material(record, TANK, ME, AT, look, told)).record
    return record


EVERY = [(look, word) for look, words in (("magnet", Magnet), ("sound", Sound), ("beneath", Beneath)) for word in words]


@pytest.mark.parametrize(("look", "word"), EVERY)
def test_each_look_is_noted_alone_and_comes_back_from_the_disk(look, word):
    record = after(blank(), (look, word.value))
    found = record.finding(TANK, ME)
    assert found.material.told == (word,)
    assert found.mark is None
    assert found.seen is Seen.EXAMINED
    assert record_of(text_of(record), 1) == record
    tells = "cannot" not in word.value
    assert found.evidence == ((Evidence.MATERIAL,) if tells else ())


def test_three_looks_stand_beside_one_another_and_one_is_taken_back():
    record = after(blank(), ("magnet", "magnet sticks"), ("sound", "sounds of metal"), ("magnet", ""))
    assert record.finding(TANK, ME).material == Material(sound=Sound.METAL)


def test_who_took_the_evidence_away_does_not_get_it_back_by_what_could_not_be_tried():
    record = after(blank(), ("beneath", "underside cannot be seen"), ("magnet", "magnet cannot be tried"))
    assert record.finding(TANK, ME).evidence == ()


def test_what_was_noted_before_there_were_these_looks_reads_as_ever():
    text = text_of(after(blank(), ("magnet", "magnet sticks")))
    older = text.replace('"material":{"magnet":"magnet sticks","sound":null,"beneath":null},', "")
    assert older != text
    assert record_of(older, 1).finding(TANK, ME).material == Material()
