"""Of which model year the machine is by its parts: allowed together, weighed, and assembly by assembly."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.assemblies import by_assembly, groups_of, groups_sentence
from inspector.judgement.evidence import form_parts
from inspector.judgement.number_evidence import number_parts
from inspector.judgement.running import running
from inspector.judgement.said import Strength
from inspector.judgement.together import part_words, together
from inspector.judgement.weighing import weigh
from inspector.judgement.wording import joined
from inspector.judgement.year_words import count_word, years_words
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from inspector.judgement.assemblies import AssemblyYears, Group
    from inspector.judgement.decode import Decoded
    from inspector.judgement.evidence import DatedPart
    from inspector.judgement.observers import ByItem
    from inspector.judgement.together import Together
    from inspector.judgement.weighing import Weight
    from inspector.profile.model import Profile
    from inspector.record.model import Record

ASSUMED = say("Assumed: the parts found on the machine belong to it.")
BESIDE_CLAIM = {  # whether only one part is firm, and whether the claimed year is among those allowed
    (True, True): "The one firmly dated part allows the claimed {year}.",
    (True, False): "The one firmly dated part does not allow the claimed {year}.",
    (False, True): "All firmly dated parts allow the claimed {year}.",
    (False, False): "The firmly dated parts do not allow the claimed {year} together.",
}


@dataclass(frozen=True, slots=True)
class Years:
    """Everything that the parts say about the model year.

    ``parts`` holds firm, era and silent ones, forms in the order of the walk and then numbers. ``youngest`` is the
    firm part with the latest first year. ``groups`` are assemblies that share years: two or more where no year is
    common to all. ``sentence`` is the whole in short, ``claim_sentence`` how the claimed year stands to it.
    """

    parts: tuple[DatedPart, ...]
    together: Together
    youngest: DatedPart | None
    weight: Weight
    by_assembly: tuple[AssemblyYears, ...]
    groups: tuple[Group, ...]
    claimed: int | None
    sentence: Say
    reasons: tuple[Say, ...]
    running: tuple[Say, ...]
    youngest_sentence: Say | None = None
    groups_sentence: Say | None = None
    claim_sentence: Say | None = None
    assumption: Say = ASSUMED
    sources: tuple[str, ...] = ()


def years(profile: Profile, record: Record, decoded: Mapping[str, Decoded], findings: ByItem | None = None) -> Years:
    """What the fitted forms and the numbers as decoded, by reading id, say about the model year."""
    parts = (*form_parts(profile, record, findings), *number_parts(profile, record, decoded))
    whole = together(parts)
    own = by_assembly(profile, parts, whole)
    groups = groups_of(own)
    youngest = youngest_part(parts)
    claimed = record.claim.model_year
    return Years(
        parts=parts,
        together=whole,
        youngest=youngest,
        weight=weigh(profile, parts),
        by_assembly=own,
        groups=groups,
        claimed=claimed,
        sentence=_sentence(whole, own),
        reasons=(*whole.reasons, *_quiet(parts), ASSUMED),
        running=running(profile, record, decoded),
        youngest_sentence=_youngest_words(youngest),
        groups_sentence=groups_sentence(own, groups),
        claim_sentence=_claim_words(claimed, whole),
        sources=tuple(dict.fromkeys(source for part in parts if part.firm for source in part.sources)),
    )


def youngest_part(parts: Sequence[DatedPart]) -> DatedPart | None:
    """The firm part whose first year is the latest, the first such in the order given; None without firm parts."""
    firm = [part for part in parts if part.firm]
    return max(firm, key=lambda part: part.years[0], default=None)


def _youngest_words(youngest: DatedPart | None) -> Say | None:
    if youngest is None:
        return None
    return say(
        "Youngest part: {part}. If it belongs to the machine, the machine as it stands is of {year} at the earliest.",
        part=part_words(youngest), year=youngest.years[0],
    )  # fmt: skip


def _claim_words(claimed: int | None, whole: Together) -> Say | None:
    if claimed is None or not whole.firm:
        return None
    if not whole.years:
        if claimed in whole.best:
            return say("With the fewest parts set aside, the others allow the claimed {year}.", year=claimed)
        return say("With the fewest parts set aside, the others do not allow the claimed {year}.", year=claimed)
    return say(BESIDE_CLAIM[whole.firm == 1, claimed in whole.years], year=claimed)


def _sentence(whole: Together, own: Sequence[AssemblyYears]) -> Say:
    dated = [one for one in own if one.parts]
    if not dated or len(whole.odd) > 1:
        return whole.sentence
    return joined([whole.sentence, _counted(dated, whole)], " ")


def _counted(dated: Sequence[AssemblyYears], whole: Together) -> Say:
    """How many of the assemblies with firm parts allow the years."""
    allow, words = sum(not one.odd for one in dated), years_words(whole.best)
    if len(dated) == 1:
        if allow:
            return say("One assembly shows a year, and it allows {years}.", years=words)
        return say("One assembly shows a year, and not all of it allows {years}.", years=words)
    total = count_word(len(dated), first=True)
    if allow == len(dated):
        return say("{total} assemblies, all allow {years}.", total=total, years=words)
    if allow == 1:
        return say("{total} assemblies, one allows {years}.", total=total, years=words)
    return say("{total} assemblies, {some} allow {years}.", total=total, some=count_word(allow), years=words)


def _quiet(parts: Sequence[DatedPart]) -> list[Say]:
    """How many parts narrow nothing, and which firm ones hang on a figure or on people who differ."""
    told = []
    era = sum(part.strength is Strength.ERA for part in parts)
    silent = sum(part.strength is Strength.SILENT for part in parts)
    if era:
        told.append(say("Shown of an era only, which narrows nothing: {count}.", count=era))
    if silent:
        told.append(say("Say nothing about the year: {count}.", count=silent))
    told += [
        say("{part}: {condition}.", part=part.name, condition=part.condition)
        for part in parts
        if part.condition is not None
    ]
    return told
