"""What a person does with photographs that are there already, each as an unstarted step."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from pydantic_core import to_jsonable_python

from inspector.record.edits import Part, Put, Step
from inspector.record.finding import Photograph
from inspector.record.model import CameraClock, Record

if TYPE_CHECKING:
    from inspector.photo.intake import Taken


def photograph_of(
    arrived: Taken, at: str, by: str, *, item: str = "", place: str = "", **told: str
) -> Photograph:  # fmt: skip
    """The photograph as a record keeps it, brought in at that time by that person for an item or a numbered place.

    ``told`` are what somebody says of it: caption, light and so on.
    """
    end = item or (f"at-{place}" if place else "loose")
    return Photograph(
        id=f"{arrived.sha256[:12]}-{end}"[:120],
        sha256=arrived.sha256,
        name=arrived.name,
        media=arrived.media,
        width=arrived.width,
        height=arrived.height,
        size=arrived.size,
        taken_at=arrived.moment,
        imported_at=at,
        by=by,
        has_place=arrived.has_place,
        camera=arrived.camera,
        item=item,
        place=place,
        **told,
    )


def change_photograph(photograph: Photograph, *, label: str, joins: str = "", **changes: Any) -> Step:
    """The photograph with these fields changed; its bytes and what its camera wrote are not among them."""
    return change_photographs((photograph,), label=label, joins=joins, **changes)


def change_photographs(photographs: Iterable[Photograph], *, label: str, joins: str = "", **changes: Any) -> Step:
    """All of these photographs with the same fields changed, as one thing to undo."""
    return Step(label=label, puts=tuple(_put(one, **changes) for one in photographs), joins=joins)


def tie_photographs(photographs: Iterable[Photograph], *, item: str = "", place: str = "") -> Step:
    """The photographs belong to this item or this numbered place, or, without either, are not yet assigned."""
    return change_photographs(photographs, label="Assign photographs", item=item, place=place)


def assign_each(pairs: Iterable[tuple[Photograph, str]]) -> Step:
    """Each photograph belongs to its own item, as one thing to undo."""
    puts = tuple(_put(photograph, item=item, place="") for photograph, item in pairs)
    return Step(label="Assign photographs", puts=puts)


def take_out(photographs: Iterable[Photograph]) -> Step:
    """The record without these photographs; their kept files stay, so that it can be undone."""
    puts = tuple(Put(part=Part.PHOTOGRAPHS, key=one.id) for one in photographs)
    label = "Take a photograph out" if len(puts) == 1 else "Take photographs out"
    return Step(label=label, puts=puts)


def set_clock(record: Record, clock: CameraClock) -> Step:
    """The clock of this camera is known to be so far off; what was known of it before is replaced."""
    kept = tuple(c for c in record.choices.clocks if c.camera != clock.camera)
    return _clocks((*kept, clock))


def forget_clock(record: Record, camera: str) -> Step:
    """Nothing is known of this camera's clock."""
    return _clocks(tuple(c for c in record.choices.clocks if c.camera != camera))


def _clocks(clocks: tuple[CameraClock, ...]) -> Step:
    value = [clock.model_dump(mode="json") for clock in clocks]
    return Step(label="Camera clock", puts=(Put(part=Part.CHOICES, key="clocks", value=value),))


def _put(photograph: Photograph, **changes: Any) -> Put:
    # Whether it can be kept is found when the step is done: there what does not hold is refused in a sentence.
    value = {**photograph.model_dump(mode="json"), **to_jsonable_python(changes)}
    return Put(part=Part.PHOTOGRAPHS, key=photograph.id, value=value)
