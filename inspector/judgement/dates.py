"""Date codes of parts against the claimed build: later cannot be, much earlier is asked about."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.claimed_build import claimed_build, span_of_months
from inspector.judgement.season import month_of
from inspector.judgement.wording import joined
from inspector.record.words import HowRead, NumberState
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from inspector.judgement.claimed_build import ClaimedBuild
    from inspector.judgement.decode import Decoded, Hit
    from inspector.profile.model import Profile
    from inspector.profile.numbers import Place
    from inspector.record.model import Record
    from inspector.record.reading import Reading


@dataclass(frozen=True, slots=True)
class PartDate:
    """One part's date code: ``built`` is every possibility as first and last month, "YYYY-MM".

    ``later_than_claim`` where every possibility is after the claimed build, ``early`` where every other one is
    before it by more than is usual, ``depends`` where the possibilities differ in that.
    """

    place: str
    name: str
    built: tuple[tuple[str, str], ...]
    later_than_claim: bool
    early: bool
    sentence: Say
    sources: tuple[str, ...]
    typed: str = ""
    depends: bool = False


def dated(profile: Profile, record: Record, decoded: Mapping[str, Decoded]) -> tuple[PartDate, ...]:
    """Every reading of a place that dates its part, in the profile's order of places."""
    claim = claimed_build(profile, record)
    return tuple(
        _date(place, reading, decoded.get(reading.id), claim)
        for place in profile.places
        if place.dates_part
        for reading in record.readings
        if reading.place == place.id
    )


def year_hits(profile: Profile, one: Decoded | None) -> tuple[Hit, ...]:
    """The hits that give a model year or a month of build."""
    return () if one is None else tuple(hit for hit in one.hits if hit.years or hit.built)


def earliest_build(hits: Iterable[Hit]) -> int | None:
    """The first counted month of all possibilities, or None where there is none."""
    return min((month_of(first) for hit in hits for first, _ in hit.built), default=None)


def _date(place: Place, reading: Reading, one: Decoded | None, claim: ClaimedBuild | None) -> PartDate:
    typed = reading.typed()
    if reading.state is not NumberState.READ or not typed:
        state = say(reading.state.value) if reading.state is not NumberState.READ else say("nothing read")
        return _unread(place, typed, say("{place}: {state}.", place=place.name, state=state))
    hits = tuple(hit for hit in one.hits if hit.built) if one is not None else ()
    if not hits:
        why = say("{place} {code}: a code of this style is not in the profile, so it is not read.",
                  place=place.name, code=typed)  # fmt: skip
        return _unread(place, typed, why)
    built = tuple(sorted({pair for hit in hits for pair in hit.built}))
    sources = tuple(dict.fromkeys(source for hit in hits for source in hit.sources))
    spans = [(month_of(first), month_of(last)) for first, last in built]
    later = [claim is not None and first > claim.last for first, _ in spans]
    early = [claim is not None and _too_early(place, last, claim) for _, last in spans]
    rest = [e for e, late in zip(early, later, strict=True) if not late]
    verdict = _verdict(place, spans, later, early, claim)
    made = say("{place} {code}{how}: made {dates}.", place=place.name, code=typed, how=_how(reading),
               dates=joined([span_of_months(*span) for span in spans], " or "))  # fmt: skip
    return PartDate(
        place.id, place.name, built, all(later), bool(rest) and all(rest), joined([made, verdict], " "), sources,
        typed, depends=len(set(zip(later, early, strict=True))) > 1,
    )  # fmt: skip


def _unread(place: Place, typed: str, sentence: Say) -> PartDate:
    return PartDate(place.id, place.name, (), False, False, sentence, (), typed)


def _how(reading: Reading) -> Say | str:
    if reading.how_read is HowRead.METAL:
        return ""
    return say(" ({how})", how=say(reading.how_read.value))


def _too_early(place: Place, last: int, claim: ClaimedBuild) -> bool:
    return place.usual_lag_months is not None and last + place.usual_lag_months < claim.first


def _verdict(
    place: Place, spans: Sequence[tuple[int, int]], later: list[bool], early: list[bool], claim: ClaimedBuild | None
) -> Say:
    if claim is None:
        return say("No year is claimed, so it is not compared.")
    each = [_one(place, span, late, soon, claim) for span, late, soon in zip(spans, later, early, strict=True)]
    if len({str(one) for one in each}) == 1:
        return each[0]
    return joined(
        [say("If {dates}: {verdict}", dates=span_of_months(*s), verdict=v) for s, v in zip(spans, each, strict=True)],
        " ",
    )


def _one(place: Place, span: tuple[int, int], late: bool, soon: bool, claim: ClaimedBuild) -> Say:
    if late:
        return say("Later than {claim}: it cannot be original to a machine built by then.", claim=claim.words)
    if soon:
        return say(
            "At least {months} months before {claim}; usually it is {usual} at most. To be asked.",
            months=claim.first - span[1], claim=claim.words, usual=place.usual_lag_months,
        )  # fmt: skip
    if span[1] >= claim.first or place.usual_lag_months is not None:
        return say("It agrees with {claim}.", claim=claim.words)
    return say("Before {claim}; how much earlier is usual, the profile does not say.", claim=claim.words)
