"""A composed sheet as PDF."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from inspector.sheet.blocks import Sheet

Paper = Literal["A4", "Letter"]


def as_pdf(sheet: Sheet, paper: Paper = "A4") -> bytes:
    """The sheet as PDF bytes, the same for the same sheet, fonts embedded. Raises ValueError for an unknown paper."""
    # Drawing costs a tenth of a second to load, so it is loaded when a sheet is wanted.
    from inspector.sheet.draw.document import drawn

    return drawn(sheet, paper)
