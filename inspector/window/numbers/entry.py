"""A number while it is written, figure by figure, and what each touch or key makes of it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from inspector.record.reading import Figure, figures_of
from inspector.record.words import Clarity

GAP = Figure(could_be=(" ",))
UNREAD = Figure(clarity=Clarity.UNREADABLE)
OR, OPEN, CLOSE, UNREADABLE = ",", "[", "]", "?"


@dataclass(frozen=True, slots=True)
class Entry:
    """The figures as they stand, and the place ``at`` which one writes.

    Places count figures from 0 and no gaps; the place behind the last is where the number goes on.
    ``gap``: the next figure stands after a gap. ``joins``: the next one is something else that the
    figure here could be. ``open``: so are all that follow, until the bracket closes. ``fresh``: the
    figure before this place was written just now, so that "or" speaks of it.
    """

    figures: tuple[Figure, ...] = ()
    at: int = 0
    gap: bool = False
    joins: bool = False
    open: bool = False
    fresh: bool = False

    @property
    def count(self) -> int:
        """How many figures there are, gaps not counted."""
        return len(places(self.figures))

    @property
    def figure(self) -> Figure | None:
        """The figure at which one is; None behind the last."""
        found = places(self.figures)
        return self.figures[found[self.at]] if self.at < len(found) else None


def places(figures: tuple[Figure, ...]) -> tuple[int, ...]:
    """Where each figure stands among figures and gaps."""
    return tuple(n for n, figure in enumerate(figures) if figure != GAP)


def at_end(figures: tuple[Figure, ...]) -> Entry:
    """The number with the place behind its last figure."""
    return Entry(figures, len(places(figures)))


def go(entry: Entry, at: int) -> Entry:
    """Another place, held within the number and the one behind it."""
    return Entry(entry.figures, min(max(at, 0), entry.count))


def typed(entry: Entry, text: str) -> Entry:
    """One character is written: a figure or letter, a gap, ``?``, or the "or" between two."""
    if text == " ":
        return gapped(entry)
    if text == OR:
        return joining(entry)
    if text == OPEN:
        return replace(go(entry, entry.at), open=True)
    if text == CLOSE:
        return _closed(entry)
    if not text.isprintable() or len(text) != 1:
        return entry
    if text == UNREADABLE:
        return _put(entry, UNREAD)
    large = text.upper()
    return _figure(entry, large if len(large) == 1 else text)


def _figure(entry: Entry, text: str) -> Entry:
    if entry.joins:
        return replace(_put(entry, with_other(entry.figure or UNREAD, text)), fresh=True)
    if not entry.open:
        return _put(entry, Figure(could_be=(text,)))
    old = entry.figure if entry.fresh else None
    new = with_other(old, text) if old else Figure(clarity=Clarity.PROBABLE, could_be=(text,))
    return replace(_put(entry, new), at=entry.at, open=True, fresh=True)


def _closed(entry: Entry) -> Entry:
    if not entry.open:
        return entry
    return replace(go(entry, entry.at + 1 if entry.fresh else entry.at), fresh=entry.fresh)


def _put(entry: Entry, figure: Figure) -> Entry:
    """The figure stands at this place instead of what stood there, and the next place is open."""
    found = places(entry.figures)
    if entry.at < len(found):
        where = found[entry.at]
        figures = (*entry.figures[:where], figure, *entry.figures[where + 1 :])
    else:
        before = (GAP,) if entry.gap and entry.figures else ()
        figures = (*entry.figures, *before, figure)
    return Entry(figures, entry.at + 1, fresh=True)


def with_other(figure: Figure, text: str) -> Figure:
    """The figure with one more thing that it could be."""
    if text in figure.could_be:
        return figure
    return Figure(clarity=Clarity.PROBABLE, could_be=(*figure.could_be, text))


def without(figure: Figure, text: str) -> Figure:
    """The figure with one thing less that it could be; with none left it cannot be read."""
    left = tuple(other for other in figure.could_be if other != text)
    return Figure(clarity=Clarity.PROBABLE, could_be=left) if left else UNREAD


def joining(entry: Entry) -> Entry:
    """What is written next is something else that the figure could be: the one just written, or the one here."""
    at = entry.at - 1 if entry.fresh and entry.at else entry.at
    return replace(go(entry, at), joins=True) if at < entry.count else entry


def gapped(entry: Entry) -> Entry:
    """A gap stands before this place; one is enough, and none stands before the first figure."""
    found = places(entry.figures)
    if entry.at == 0:
        return entry
    if entry.at >= len(found):
        return replace(go(entry, entry.at), gap=True)
    where = found[entry.at]
    if entry.figures[where - 1] == GAP:
        return go(entry, entry.at)
    return Entry((*entry.figures[:where], GAP, *entry.figures[where:]), entry.at)


def back(entry: Entry) -> Entry:
    """What stands before this place is gone: a gap first, then the figure."""
    found = places(entry.figures)
    if entry.gap or entry.at == 0:
        return go(entry, entry.at)
    where = found[entry.at] if entry.at < len(found) else len(entry.figures)
    gap = entry.figures[where - 1] == GAP
    return Entry(_tidy((*entry.figures[: where - 1], *entry.figures[where:])), entry.at - (not gap))


def delete(entry: Entry) -> Entry:
    """The figure at this place is gone; those behind it move up."""
    found = places(entry.figures)
    if entry.at >= len(found):
        return go(entry, entry.at)
    where = found[entry.at]
    return Entry(_tidy((*entry.figures[:where], *entry.figures[where + 1 :])), entry.at)


def insert(entry: Entry) -> Entry:
    """A figure that nobody has read yet stands before this place, to be written over."""
    found = places(entry.figures)
    where = found[entry.at] if entry.at < len(found) else len(entry.figures)
    return Entry((*entry.figures[:where], UNREAD, *entry.figures[where:]), entry.at)


def changed(entry: Entry, figure: Figure) -> Entry:
    """The figure at this place is that one; the place stays."""
    return Entry(_put(entry, figure).figures, entry.at)


def clearer(figure: Figure, clarity: Clarity) -> Figure | None:
    """The figure seen that well; None where one has to say first what it could be."""
    if clarity is Clarity.UNREADABLE:
        return UNREAD
    if not figure.could_be:
        return None
    return Figure(clarity=clarity, could_be=figure.could_be[:1] if clarity is Clarity.CLEAR else figure.could_be)


def pasted(text: str) -> Entry:
    """The whole number as typed elsewhere (``?`` unreadable, ``[19]`` "1 or 9"); raises ValueError with a sentence."""
    return at_end(_tidy(figures_of(" ".join(text.split()).upper())))


def _tidy(figures: tuple[Figure, ...]) -> tuple[Figure, ...]:
    """No gap at either end, and never two together."""
    kept: list[Figure] = []
    for figure in figures:
        if figure != GAP or (kept and kept[-1] != GAP):
            kept.append(figure)
    return tuple(kept[:-1] if kept and kept[-1] == GAP else kept)
