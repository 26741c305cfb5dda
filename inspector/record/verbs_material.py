"""The step that notes what magnet, tap and the underside told."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.record.material import Material
from inspector.record.verbs import change_finding
from inspector.record.words import Evidence

if TYPE_CHECKING:
    from inspector.record.edits import Step
    from inspector.record.model import Record


def see_material(record: Record, item: str, by: str, at: str, look: str, told: str) -> Step:
    """The item with what one look ("magnet", "sound", "beneath") told, nothing where ``told`` is empty.

    What tells something of the material is evidence of that kind; it is left to the person to take that away.
    """
    old = record.finding(item, by)
    had, evidence = (old.material, old.evidence) if old else (Material(), ())
    material = Material.model_validate({**had.model_dump(), look: told or None})
    if told and material.says and material != had:
        evidence = tuple(dict.fromkeys((*evidence, Evidence.MATERIAL)))
    label = f"Material: {told}" if told else "Material"
    return change_finding(record, item, by, at, label=label, material=material.model_dump(), evidence=evidence)
