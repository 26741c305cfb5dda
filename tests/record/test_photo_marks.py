"""Marks and measurements of a photograph are data of the record: kept, taken back, and absent from older records."""

import pytest
from pydantic import ValidationError

from inspector.record.edits import apply
from inspector.record.finding import Photograph, PhotoMark, PhotoMeasure
from inspector.record.photographs import change_photograph
from inspector.record.refusing import EditRefused
from inspector.record.verbs import add_photographs
from inspector.record.words import Drawn
from tests.record.steps import blank

PLAIN = {"id": "p", "sha256": "0" * 64, "name": "pad.jpg", "media": "image/jpeg", "width": 4, "height": 3, "size": 9}
MARK = PhotoMark(kind=Drawn.ARROW, points=((0.1, 0.2), (0.3, 0.4)))
MEASURE = PhotoMeasure(id="m1", what="length", reference="id-1", points=((0.1, 0.2), (0.3, 0.4)), value=40.1,
                       low=39.6, high=40.5, uncertainty=0.23, unit="mm", note="40.1 mm")  # fmt: skip


def test_a_photograph_of_an_older_record_has_neither():
    assert (Photograph.model_validate(PLAIN).marks, Photograph.model_validate(PLAIN).measures) == ((), ())


def test_they_are_put_and_taken_back_exactly():
    record = apply(blank(), add_photographs((Photograph.model_validate(PLAIN),))).record
    step = change_photograph(record.photographs[0], label="Mark", marks=(MARK,), measures=(MEASURE,))
    after, inverse = apply(record, step)
    assert (after.photographs[0].marks, after.photographs[0].measures) == ((MARK,), (MEASURE,))
    assert Photograph.model_validate_json(after.photographs[0].model_dump_json()) == after.photographs[0]
    assert apply(after, inverse).record == record


@pytest.mark.parametrize("points", [(), ((1.2, 0.5),), ((0.1, 0.1),) * 3, ((float("nan"), 0.1),)])
def test_points_lie_in_the_picture_and_are_one_or_two(points):
    with pytest.raises(ValidationError):
        PhotoMark(kind=Drawn.RING, points=points)


def test_a_mark_outside_the_picture_is_refused_by_an_edit():
    photograph = Photograph.model_validate(PLAIN)
    record = apply(blank(), add_photographs((photograph,))).record
    step = change_photograph(photograph, label="Mark", marks=(MARK,))
    broken = step.model_copy(update={"puts": (step.puts[0].model_copy(update={
        "value": {**step.puts[0].value, "marks": [{"kind": "arrow", "points": [[2, 2]], "text": ""}]}}),)})  # fmt: skip
    with pytest.raises(EditRefused):
        apply(record, broken)
