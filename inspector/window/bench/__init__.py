"""The bench: one photograph looked at closely, in working copies; the kept file is only ever read."""

from inspector.window.desk import Desk


def open_bench(desk: Desk, photo_id: str) -> None:
    """The photograph with this id is on the bench, over the page that is open."""
    desk.looking.emit(photo_id)
