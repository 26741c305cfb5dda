"""Points as they stand on a sheet: the total, each loss with its reason, and how far the total could fall."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.sheet.blocks import Phrase, PointsBlock, Row
from inspector.sheet.words import listed
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from inspector.judgement.judge import Judgement
    from inspector.judgement.points import Deduction, Points
    from inspector.profile.model import Profile


def points_blocks(profile: Profile, judgement: Judgement) -> tuple[PointsBlock, ...]:
    """The block of the profile's scheme where it is counted by; nothing where it was not chosen."""
    points, scheme = judgement.points, profile.points
    if points is None or scheme is None:
        return ()
    return (PointsBlock(tr("Points"), tuple(_rows(points)), note=scheme.name),)


def _rows(points: Points) -> Iterator[Row]:
    total = tr("{total} of {full}", total=points.total, full=points.full)
    yield Row("", Phrase(total, tr("could fall to {lowest}", lowest=points.lowest)), points.threshold)
    yield from (_lost(one) for one in points.deductions)
    if not points.deductions:
        yield Row("", Phrase("", tr("Nothing is taken off.")))
    if points.may_lose:
        yield Row("", Phrase(tr("May still lose:"), _named(points.may_lose)))
    yield from (Row("", Phrase("", tr(reason))) for reason in points.reasons)


def _lost(one: Deduction) -> Row:
    return Row("", Phrase(f"−{one.lost}", tr("{heading}: {reason}", heading=one.name, reason=tr(one.reason))))


def _named(may: Iterable[Deduction]) -> str:
    """What may be lost, heading by heading; the items under one heading stand together."""
    return listed((f"{tr(one.reason).rstrip('.')} (−{one.lost})" for one in may), "; ") + "."
