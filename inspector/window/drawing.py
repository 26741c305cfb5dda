"""Which outline drawing stands for a view: the profile's own, or the one that ships."""

from __future__ import annotations

from contextlib import suppress
from typing import TYPE_CHECKING

from inspector.resource import outline
from inspector.window.look.drawing import NoDrawing

if TYPE_CHECKING:
    from pathlib import Path

    from inspector.profile.words import View
    from inspector.window.desk import Desk
    from inspector.window.look.outline import OutlineView

LEFT = "left"


def drawings(desk: Desk, view: View) -> list[Path]:
    """The drawings to try for that view: the profile's own first, then the one that ships."""
    own = desk.profile.outlines.get(view)
    found = [desk.folder / own if own else None, outline(view.value), outline(LEFT)]
    return [path for path in found if path is not None]


def prepare_drawing(shown: OutlineView, paths: list[Path]) -> None:
    """The first drawing that can be read is ready to be shown."""
    for path in paths:
        with suppress(NoDrawing):
            shown.prepare(path)
            return


def show_drawing(shown: OutlineView, paths: list[Path]) -> None:
    """The first drawing that can be read is shown; none is no fault of the person's."""
    for path in paths:
        with suppress(NoDrawing):
            shown.set_drawing(path)
            return
