"""Photographs that belong to something: small pictures, a key to add, drop and paste."""

from abc import abstractmethod
from collections.abc import Sequence

from PySide6.QtWidgets import QWidget

from inspector.photo.intake import Source
from inspector.record.edits import Part
from inspector.record.finding import Photograph
from inspector.record.verbs import drop_entry
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.dropping import TakesPhotographs
from inspector.window.intake import Bringing, Tie, photograph_of, sources_of
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.text import Text
from inspector.window.thumb import Thumb

__all__ = ["PhotographStrip", "Tie", "photograph_of", "sources_of"]


class PhotographStrip(TakesPhotographs, Column):
    """Small pictures in the order brought in; each opens large, and can be taken out again.

    What they belong to is said by ``tie``; ``brings`` is what takes them in.
    """

    brings: type[Bringing] = Bringing

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self.bringing = self.brings(desk, self)
        self.plus = Key(
            desk.look, tr("photograph"), sign="plus", name=tr("Add photographs: choose, drop or paste them")
        )
        self.paste = Key(desk.look, tr("paste"), name=tr("Paste a photograph"))
        self.stop = Key(desk.look, tr("stop"), sign="stop", name=tr("Stop taking photographs in"))
        self.progress = Text(desk.look, ink="soft")
        self.row = KeyRow(desk.look, [self.plus, self.paste], fit="flow")
        self.add(self.row)
        self.add(self.progress, 1)
        self.add(self.stop, 1)
        self.progress.hide()
        self.stop.hide()
        self.setAcceptDrops(True)
        self.plus.clicked.connect(lambda: desk.ask.photographs(self.take_in))
        self.paste.clicked.connect(self.paste_now)
        self.stop.clicked.connect(self.bringing.stop)
        self.bringing.began.connect(self._begin)
        self.bringing.progress.connect(self._show_progress)
        self.bringing.ended.connect(self._finish)

    @abstractmethod
    def tie(self) -> Tie:
        """What photographs are shown, and brought in, for."""

    def tied(self, tie: Tie) -> tuple[Photograph, ...]:
        """The photographs of the record that belong to it, in the order brought in."""
        return tuple(p for p in self.desk.record.photographs if tie.holds(p))

    def show_item(self) -> None:
        """The photographs that belong here are shown."""
        had = {key.photograph: key for key in self.row.keys if isinstance(key, Thumb)}
        thumbs = [had.get(p) or self._thumb(p) for p in self.tied(self.tie())]
        self.row.set_keys([*thumbs, self.plus, self.paste, *self.more()])

    def more(self) -> list[QWidget]:
        """Keys beside those that choose and paste."""
        return []

    def _thumb(self, photograph: Photograph) -> Thumb:
        thumb = Thumb(self.desk, photograph)
        thumb.removed.connect(self._remove)
        return thumb

    # bringing in

    def take_in(self, sources: Sequence[Source]) -> None:
        """The photographs are taken in beside the window and tied to what is open now."""
        self.bringing.take_in(sources, self.tie())

    def _begin(self) -> None:
        self.progress.show()
        self.stop.show()

    def _show_progress(self, done: int, total: int, name: str) -> None:
        self.progress.say(tr("Taking in {done} of {total}: {name}", done=done + 1, total=total, name=name))

    def _finish(self) -> None:
        self.progress.hide()
        self.stop.hide()

    def _remove(self, photograph: str) -> None:
        self.desk.do(drop_entry(Part.PHOTOGRAPHS, photograph, label="Take a photograph out"))
