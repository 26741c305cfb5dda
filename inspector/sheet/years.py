"""The model year by the parts as it stands on a sheet: a sentence, a chart that says the same, reasons, weight."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.year_words import chart_years, runs, signed, years_words
from inspector.sheet.blocks import YearRow, YearsBlock, YearSpan
from inspector.sheet.words import listed
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from inspector.judgement.assemblies import AssemblyYears
    from inspector.judgement.judge import Judgement
    from inspector.judgement.weighing import Weight
    from inspector.judgement.years import Years
    from inspector.profile.model import Profile
    from inspector.texts import Say

MOST_WEIGHED = 9  # years in the table of weights, and the claimed one


def years_block(profile: Profile, judgement: Judgement) -> YearsBlock:
    """What the parts say of the model year; without any bar there is no chart, since the sentence says it all."""
    years = judgement.years
    tied = len(years.together.odd) > 1
    rows = tuple(_row(own, tied=tied) for own in years.by_assembly)
    ends = (end for row in rows for span in row.spans for end in (span.first, span.last))
    first, last = chart_years(profile.years, years.claimed, ends)
    return YearsBlock(
        title=tr("Years"),
        sentence=tr(years.sentence),
        lines=tuple(dict.fromkeys(tr(one) for one in _lines(years))),
        first=first,
        last=last,
        claimed=years.claimed,
        claimed_word=tr("claimed"),
        rows=rows if any(row.spans for row in rows) else (),
        weight=_weight(years.weight),
        table=_table(years.weight, years.claimed) if years.weight.witnesses else (),
        reasons=tuple(dict.fromkeys(tr(one) for one in _reasons(years))),
    )


def _lines(years: Years) -> Iterator[Say]:
    """How the claim stands to it, what goes together, the youngest part, and the changes by serial."""
    told = (years.claim_sentence, years.groups_sentence if len(years.groups) > 1 else None, years.youngest_sentence)
    yield from (one for one in told if one is not None)
    yield from years.running


def _reasons(years: Years) -> Iterator[Say]:
    yield from (own.sentence for own in years.by_assembly if own.parts)
    yield from years.reasons


def _row(own: AssemblyYears, *, tied: bool) -> YearRow:
    """Odd ones hatched, what hangs on a figure broken, the rest plain; ``tied`` where others may be odd instead."""
    allowed = own.years or own.left
    odd = own.odd or bool(own.left and not own.years)
    firm = [year for year in allowed if year not in own.conditional]
    spans = (*_spans(firm, "odd" if odd else "allowed"), *_spans(own.conditional, "odd" if odd else "condition"))
    word = tr("odd one out, or another is") if tied else tr("odd one out")
    notes = (word if odd else "", *((tr(c) for c in own.conditions) if own.conditional else ()))
    name, words = tr(own.assembly.value), years_words(allowed) or tr("nothing shown")
    return YearRow(name, tuple(sorted(spans, key=lambda span: span.first)), words, listed(notes, "; "))


def _spans(years: Iterable[int], kind: str) -> Iterator[YearSpan]:
    yield from (YearSpan(first, last, kind) for first, last in runs(tuple(years)))


def _weight(weight: Weight) -> tuple[str, ...]:
    """The sentence, and with what was weighed the reasons and the assumption."""
    more = (weight.assumption,) if weight.witnesses else ()
    return tuple(tr(one) for one in (weight.sentence, *weight.reasons, *more))


def _table(weight: Weight, claimed: int | None) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Decibans of the heaviest years and the claimed one, in the order of years, by how often parts were swapped."""
    told = set(weight.ranking[:MOST_WEIGHED]) | ({claimed} & set(weight.decibans))
    years = sorted(year for year in told if year is not None)
    kinds = (
        (tr("as assumed"), weight.decibans),
        (tr("swapped half as often"), weight.halved),
        (tr("swapped twice as often"), weight.doubled),
    )
    head = (tr("Decibans"), tuple(str(year) for year in years))
    return (head, *((name, tuple(signed(weights[year]) for year in years)) for name, weights in kinds))
