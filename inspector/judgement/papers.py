"""The numbers that papers quote beside those on the metal; a slip of the pen is named as that slip."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from inspector.judgement.paper_against import Against, against
from inspector.judgement.paper_years import inquiries_said, years_kept_apart
from inspector.judgement.pattern import pattern_of
from inspector.judgement.relation_words import read_words
from inspector.judgement.sides import SEPARATORS, identity_places, sides_of, spots_of
from inspector.judgement.stand import Stand
from inspector.judgement.wording import joined
from inspector.record.reading import Figure, figures_of
from inspector.record.words import PaperState
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from inspector.judgement.decode import Decoded
    from inspector.judgement.sides import Side, Spot
    from inspector.profile.model import Profile
    from inspector.record.claim import Paper, Quoted
    from inspector.record.model import Record

__all__ = ["PaperStanding", "Stand", "compare_papers", "inquiries_said", "years_kept_apart"]


@dataclass(frozen=True, slots=True)
class PaperStanding:
    """One number that a paper quotes, the place it was compared with, and how they stand.

    ``place`` is "" where there was nothing to compare with; ``slip`` is "", "dropped prefix", "look-alike",
    "swapped neighbours", "missing figure" or "figure too many".
    """

    paper: str
    name: str
    quoted: str
    place: str
    place_name: str
    stand: Stand
    slip: str
    sentence: Say
    reasons: tuple[Say, ...]
    state: PaperState


def compare_papers(
    profile: Profile,
    record: Record,
    decoded: Mapping[str, Decoded] | None = None,
    known: Mapping[str, Side] | None = None,
) -> tuple[PaperStanding, ...]:
    """Every number that the papers quote, in the order entered, and each paper that quotes none.

    ``decoded`` holds what the readings say by rule, by reading id; without it the longest run of figures is the serial.
    """
    sides = sides_of(profile, record, decoded or {}) if known is None else known
    return tuple(one for paper in record.papers for one in _of_paper(profile, paper, sides))


def _of_paper(profile: Profile, paper: Paper, sides: Mapping[str, Side]) -> Iterable[PaperStanding]:
    tied = any(q.number.strip() for q in paper.quoted)
    if tied:
        yield from (_standing(profile, paper, one, sides) for one in paper.quoted)
    else:
        untied = say("not tied to this machine")
        none = (say("It quotes no number."),)
        yield PaperStanding(paper.id, paper.name, "", "", "", Stand.CANNOT, "", untied, none, paper.state)


def _standing(profile: Profile, paper: Paper, quoted: Quoted, sides: Mapping[str, Side]) -> PaperStanding:
    if not quoted.number.strip():
        blank = say("no number entered")
        return PaperStanding(paper.id, paper.name, "", "", "", Stand.CANNOT, "", blank, (), paper.state)
    spots = _spots(quoted.number)
    side = sides.get(quoted.place)
    found = against(side, spots) if side else None if quoted.place else _nearest(profile, sides, spots)
    if found is None:
        nothing = say("cannot compare: no number of the machine was read that it could be")
        return PaperStanding(paper.id, paper.name, quoted.number, "", "", Stand.CANNOT, "", nothing, (), paper.state)
    place = profile.place_by_id[found.side.place]
    return PaperStanding(
        paper.id, paper.name, quoted.number, place.id, place.name, found.stand, found.slip, _how(paper, found),
        (*found.reasons, *read_words((found.side,))), paper.state,
    )  # fmt: skip


def _spots(typed: str) -> tuple[Spot, ...]:
    """The figures of the quoted number; where its brackets make no sense, each character as it stands."""
    try:
        figures = figures_of(typed)
    except ValueError:
        figures = tuple(Figure(could_be=(c,)) for c in typed.strip())
    return spots_of(pattern_of(figures, SEPARATORS))


def _nearest(profile: Profile, sides: Mapping[str, Side], spots: Sequence[Spot]) -> Against | None:
    """How the number stands to the identity place that it comes nearest, of those that were read."""
    found = [against(sides[p], spots) for p in identity_places(profile) if sides[p].pattern is not None]
    if not found:
        return None
    best = min(found, key=lambda one: one.rank)
    as_near = [one.side.name for one in found if one is not best and one.rank == best.rank]
    words = say("The paper does not say which number it quotes; it was compared with every number that was read, and"
                " comes nearest to the {place}.", place=best.side.name)  # fmt: skip
    more = (say("As near: {places}.", places=joined(as_near)),) if as_near else ()
    return replace(best, reasons=(words, *more, *best.reasons))


def _how(paper: Paper, found: Against) -> Say:
    """The sentence with how the number was read where not from the metal, and what the paper was."""
    how = found.side.read_how if found.side.pattern is not None else None
    said = [say("{place} {how}", place=found.side.name, how=how)] if how else []
    if paper.state is PaperState.COPY:
        said.append(say("the paper is a copy"))
    if paper.state is PaperState.TOLD:
        said.append(say("the paper was told of and not seen"))
    if paper.state is PaperState.UNSAID:
        said.append(say("whether the paper is the original is not said"))
    return say("{sentence} ({how})", sentence=found.sentence, how=joined(said, "; ")) if said else found.sentence
