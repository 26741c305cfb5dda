"""What every part says of the year, and how each year weighs, in full."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.said import Strength
from inspector.judgement.year_words import signed, years_words
from inspector.sheet.figure_blocks import FigureRow, FiguresBlock
from inspector.sheet.words import listed, sentence
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.judgement.evidence import DatedPart
    from inspector.judgement.judge import Judgement
    from inspector.profile.model import Profile

STRENGTHS = {Strength.FIRM: "firm", Strength.ERA: "an era only", Strength.SILENT: "nothing"}


def evidence_blocks(profile: Profile, judgement: Judgement) -> Iterator[FiguresBlock]:
    """Every part with what it shows, why and by which source; then the decibans of every year."""
    years = judgement.years
    rows = tuple(evidence_row(profile, part) for part in years.parts)
    lines = (tr("What each part shows, why, and by which source."),)
    if rows:
        yield FiguresBlock(tr("Evidence of the year"), (tr("years"), tr("it shows")), rows, lines, column=27.0)
    if years.weight.witnesses:
        yield _weights(judgement)


def evidence_row(profile: Profile, part: DatedPart) -> FigureRow:
    """One part: its years, how firmly, and what that rests on."""
    reason = tr(part.reason)
    titles = [source.title if (source := profile.source_by_id.get(key)) else key for key in part.sources]
    cited = listed((title for title in titles if title not in reason), " + ")
    condition = tr(part.condition) if part.condition is not None else ""
    said = listed(map(sentence, (part.what, reason, condition, cited)), " ")
    return FigureRow(part.name, (years_words(part.years) or "–", tr(STRENGTHS[part.strength])), said)


def _weights(judgement: Judgement) -> FiguresBlock:
    weight, claimed = judgement.years.weight, judgement.years.claimed
    rows = tuple(
        FigureRow(tr("{year}, claimed", year=year) if year == claimed else str(year),
                  tuple(signed(of[year]) for of in (weight.decibans, weight.halved, weight.doubled)),
                  strong=year == claimed)
        for year in sorted(weight.decibans)
    )  # fmt: skip
    heads = (tr("as assumed"), tr("swapped half as often"), tr("swapped twice as often"))
    lines = (tr(weight.sentence), *(tr(one) for one in weight.reasons))
    return FiguresBlock(tr("Weight of each year, in decibans"), heads, rows, lines, notes=(tr(weight.assumption),),
                        column=36.0, first=tr("model year"))  # fmt: skip
