"""What magnet, tap and the underside told of what a part is made of, and the step that notes it."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.record.base import Piece

if TYPE_CHECKING:
    from inspector.record.edits import Step
    from inspector.record.model import Record


class Magnet(StrEnum):
    """What a magnet does."""

    STICKS = "magnet sticks"
    FALLS = "magnet does not stick"
    CANNOT = "magnet cannot be tried"


class Sound(StrEnum):
    """What it sounds of when it is tapped."""

    METAL = "sounds of metal"
    FIBRE = "sounds of fibre"
    PLASTIC = "sounds of plastic"
    CANNOT = "sound cannot be told"


class Beneath(StrEnum):
    """What is seen where no paint lies, on the underside or at an edge."""

    METAL = "metal seen underneath"
    FIBRE = "fibre seen underneath"
    PLASTIC = "plastic seen underneath"
    CANNOT = "underside cannot be seen"


class Material(Piece):
    """What was told by each of three looks; None where it was not tried."""

    magnet: Magnet | None = None
    sound: Sound | None = None
    beneath: Beneath | None = None

    @property
    def told(self) -> tuple[Magnet | Sound | Beneath, ...]:
        """Everything that was noted, what could not be tried as well."""
        return tuple(one for one in (self.magnet, self.sound, self.beneath) if one is not None)

    @property
    def says(self) -> bool:
        """Whether any of them tells something of the material."""
        return any(one not in (Magnet.CANNOT, Sound.CANNOT, Beneath.CANNOT) for one in self.told)


def see_material(record: Record, item: str, by: str, at: str, look: str, told: str) -> Step:
    """The item with what one look ("magnet", "sound", "beneath") told, nothing where ``told`` is empty.

    What tells something of the material is evidence of that kind; it is left to the person to take that away.
    """
    from inspector.record.verbs import change_finding
    from inspector.record.words import Evidence

    old = record.finding(item, by)
    had, evidence = (old.material, old.evidence) if old else (Material(), ())
    material = Material.model_validate({**had.model_dump(), look: told or None})
    if told and material.says and material != had:
        evidence = tuple(dict.fromkeys((*evidence, Evidence.MATERIAL)))
    label = f"Material: {told}" if told else "Material"
    return change_finding(record, item, by, at, label=label, material=material.model_dump(), evidence=evidence)
