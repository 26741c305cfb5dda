"""What is done with photographs is a step that can be taken back; their bytes and times are not among it."""

import pytest

from inspector.record.edits import Part, apply
from inspector.record.finding import Box, Photograph
from inspector.record.model import CameraClock, Record
from inspector.record.photographs import (
    assign_each,
    change_photograph,
    forget_clock,
    set_clock,
    take_out,
    tie_photographs,
)
from inspector.record.refusing import EditRefused
from tests.record.steps import blank


def photograph(key, **more):
    return Photograph(id=key, sha256="a" * 64, name=key + ".jpg", media="image/jpeg", width=4, height=3, size=9,
                      taken_at="2026-05-09T10:00:00", **more)  # fmt: skip


@pytest.fixture
def record():
    return blank().model_copy(update={"photographs": (photograph("one"), photograph("two", item="tank"))})


def does(record, step):
    """The record after the step, known to come back to the letter."""
    after, inverse = apply(record, step)
    assert apply(after, inverse).record == record
    return after


def test_several_move_to_an_item_or_a_place_as_one_thing(record):
    after = does(record, tie_photographs(record.photographs, place="frame"))
    assert [(p.item, p.place) for p in after.photographs] == [("", "frame")] * 2
    again = does(after, tie_photographs(after.photographs, item="wheel"))
    assert [(p.item, p.place) for p in again.photographs] == [("wheel", "")] * 2
    assert [p.id for p in again.photographs] == ["one", "two"]


def test_each_to_its_own_item_is_one_step(record):
    step = assign_each([(record.photographs[0], "wheel"), (record.photographs[1], "lamp")])
    assert [p.item for p in does(record, step).photographs] == ["wheel", "lamp"]


def test_taken_out_and_brought_back_each_stands_where_it_stood(record):
    assert does(record, take_out(record.photographs[:1])).photographs == record.photographs[1:]
    assert does(record, take_out(record.photographs)).photographs == ()


def test_boxes_are_data_of_the_record_and_come_back_from_the_disk(record):
    box = Box(left=0.1, top=0.2, right=0.4, bottom=0.5)
    after = does(record, change_photograph(record.photographs[0], label="Cover", masks=(box,)))
    assert after.photographs[0].masks == (box,)
    assert Record.model_validate_json(after.model_dump_json()) == after
    assert after.photographs[0].sha256 == record.photographs[0].sha256


@pytest.mark.parametrize("edges", [(0.4, 0.2, 0.4, 0.5), (0.5, 0.2, 0.4, 0.5), (0.1, 0.6, 0.4, 0.5)])
def test_a_box_without_room_is_refused(edges):
    left, top, right, bottom = edges
    with pytest.raises(ValueError, match="ends right of and below"):
        Box(left=left, top=top, right=right, bottom=bottom)


def test_a_box_outside_the_picture_is_refused(record):
    step = change_photograph(record.photographs[0], label="Cover", caption="x")
    value = {**step.puts[0].value, "masks": [{"left": -0.1, "top": 0, "right": 0.5, "bottom": 0.5}]}
    bad = step.model_copy(update={"puts": (step.puts[0].model_copy(update={"value": value}),)})
    with pytest.raises(EditRefused):
        apply(record, bad)


def test_a_camera_has_one_clock_and_its_photographs_keep_their_times(record):
    first = CameraClock(camera="Nocam One", seconds=60, photograph="one", shows="10:01")
    after = does(record, set_clock(record, first))
    second = first.model_copy(update={"seconds": 90})
    other = CameraClock(camera="Another", seconds=5)
    after = does(does(after, set_clock(after, second)), set_clock(after, other))
    assert after.choices.clocks == (first, other)
    again = does(after, set_clock(after, second))
    assert {c.camera: c.seconds for c in again.choices.clocks} == {"Nocam One": 90, "Another": 5}
    assert does(again, forget_clock(again, "Another")).choices.clocks == (second,)
    assert again.photographs == record.photographs


def test_a_record_written_without_boxes_and_clocks_is_read(record):
    old = record.model_dump(mode="json")
    for one in old[Part.PHOTOGRAPHS.value]:
        for name in ("masks", "camera", "shot"):
            del one[name]
    del old["choices"]["clocks"]
    assert Record.model_validate(old) == record
