"""What every side of the bench shares: its overlay, and what it does when it is opened."""

from PySide6.QtWidgets import QWidget

from inspector.window.bench.canvas import Canvas
from inspector.window.bench.overlay import Overlay
from inspector.window.bench.subject import Subject
from inspector.window.look.columns import Column

EDGE = 3.0  # at both sides of a row, so that the bar at the current one stands clear of its words


class Panel(Column):
    """Keys and words beside the picture for one kind of work; ``overlay`` lies over the picture meanwhile."""

    def __init__(self, subject: Subject, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(subject.desk.look, edge=0, top=0, parent=parent)
        self.subject, self.canvas, self.desk = subject, canvas, subject.desk
        self.overlay = Overlay(self)
        subject.changed.connect(self.show_kept)

    def open(self) -> None:
        """This kind of work begins."""
        self.canvas.lay(self.overlay)
        self.show_kept()

    def show_kept(self) -> None:
        """What the record keeps of the photograph is shown."""
