"""A length typed on the bench, in millimetres."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.lengths import NotALength, in_unit, typed_length
from inspector.profile.words import Unit
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.window.look.fields import LineField


def millimetres(field: LineField) -> float | None:
    """The length in the field, in mm; None where nothing is written or it is no length, which the field then says."""
    text = field.value().strip()
    field.say("")
    if not text:
        return None
    try:
        typed = typed_length(text, Unit.MM)
        return float(in_unit(typed.value, typed.unit, Unit.MM))
    except NotALength as trouble:
        field.say(tr(trouble.said))
        return None
