"""The bench over the page that is open, and that page again when it is left."""

from PySide6.QtWidgets import QStackedWidget

from inspector.window.bench.bench import Bench
from inspector.window.desk import Desk


def put_on_bench(desk: Desk, stack: QStackedWidget, photo_id: str) -> Bench | None:
    """The photograph is on a bench of its own in the stack; gone again when another page comes.

    None where the record has no such photograph.
    """
    if desk.session is None or all(p.id != photo_id for p in desk.record.photographs):
        return None
    open_now = stack.currentWidget()
    bench = Bench(desk, photo_id)
    bench.before = open_now.before if isinstance(open_now, Bench) else open_now

    def leave() -> None:
        if stack.currentWidget() is bench and bench.before is not None:
            stack.setCurrentWidget(bench.before)

    def gone() -> None:
        if stack.currentWidget() is not bench and stack.indexOf(bench) >= 0:
            stack.removeWidget(bench)
            desk.opened.disconnect(leave)
            stack.currentChanged.disconnect(gone)
            bench.close_down()
            bench.deleteLater()

    stack.addWidget(bench)
    stack.setCurrentWidget(bench)
    bench.left.connect(leave)
    desk.opened.connect(leave)
    stack.currentChanged.connect(gone)
    return bench
