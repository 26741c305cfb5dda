"""How the fitted forms weigh for each model year, in decibans: a weight between years, and nothing else."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import exp, fsum, inf, log
from typing import TYPE_CHECKING, TypeVar

from inspector.judgement.shares import mean_pieces, pieces_of
from inspector.judgement.wording import joined
from inspector.judgement.year_words import count_word, listed
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.judgement.evidence import DatedPart
    from inspector.judgement.shares import Piece
    from inspector.profile.model import Profile
    from inspector.profile.words import Assembly

H = TypeVar("H", bound=Hashable)

USUAL_SWAP = 0.3
LEAST_SWAP = 0.01
DECIBANS = 10 / log(10)
TOLD = 3


@dataclass(frozen=True, slots=True)
class Weight:
    """Decibans for each model year against all others together, with parts swapped as often as assumed.

    ``halved`` and ``doubled`` are the same under half and twice the swap rates. ``ranking`` is the years, heaviest
    first, and ``steady`` tells whether that order holds under both. ``lead`` is by how many decibans the first
    year outweighs the second. ``witnesses`` counts what was weighed: assemblies, or parts one by one.
    """

    decibans: Mapping[int, float]
    halved: Mapping[int, float]
    doubled: Mapping[int, float]
    assumption: Say
    ranking: tuple[int, ...]
    steady: bool
    sentence: Say
    reasons: tuple[Say, ...]
    lead: float = 0.0
    witnesses: int = 0


@dataclass(frozen=True, slots=True)
class Witness:
    """One part: its shares among the forms of a year, its share among all its item's forms, and its swap rate."""

    part: str
    assembly: Assembly
    pieces: tuple[Piece, ...]
    background: float
    swap: float
    assumed: bool

    def add_to(self, steps: list[float], factor: float) -> None:
        """The natural logarithm of its likelihood is added year by year, as the steps from one year to the next.

        The likelihood is (1 - s) times the share among the forms of the year plus s times the background, with s
        the swap rate times the factor.
        """
        swapped = min(1.0, max(LEAST_SWAP, self.swap * factor))
        elsewhere = log(swapped * self.background)
        steps[0] += elsewhere
        for low, high, share in self.pieces:
            more = log((1 - swapped) * share + swapped * self.background) - elsewhere
            steps[low] += more
            steps[high] -= more


def combine(likelihoods: Iterable[Mapping[H, float]], prior: Mapping[H, float] | None = None) -> dict[H, float]:
    """The share of each possibility by Bayes' rule, together 1, from independent witnesses.

    Each witness maps every possibility to the likelihood of what it shows; ``prior`` may be left out where all
    weigh the same beforehand. Raises ValueError where there is no possibility, or none that can be.
    """
    sums = _log_sums(likelihoods, prior)
    most = max(sums.values(), default=-inf)
    if most == -inf:
        raise ValueError("no possibility is left to share")
    weights = {key: exp(value - most) for key, value in sums.items()}
    total = fsum(weights.values())
    return {key: weight / total for key, weight in weights.items()}


def decibans(likelihoods: Iterable[Mapping[H, float]]) -> dict[H, float]:
    """10 log10 (P(E|h) / P(E|not h)) of each possibility, the others weighing the same beforehand; 0 if alone.

    Formula and unit: General Report on Tunny (1945), page 39.
    """
    return _against_the_rest(_log_sums(likelihoods, None))


def _log_sums(likelihoods: Iterable[Mapping[H, float]], prior: Mapping[H, float] | None) -> dict[H, float]:
    held = list(likelihoods) if prior is None else [prior, *likelihoods]
    keys = tuple(held[0]) if held else ()
    return {key: fsum(_log(one[key]) for one in held) for key in keys}


def _log(value: float) -> float:
    return log(value) if value > 0 else -inf


def _against_the_rest(sums: Mapping[H, float]) -> dict[H, float]:
    found = {}
    for key, own in sums.items():
        others = [value for other, value in sums.items() if other != key]
        most = max(others, default=own)
        if most == -inf or not others:
            found[key] = 0.0 if own == most else inf
            continue
        rest = most + log(fsum(exp(value - most) for value in others) / len(others))
        found[key] = DECIBANS * (own - rest)
    return found


def weigh(profile: Profile, parts: Sequence[DatedPart], *, one_by_one: bool = False) -> Weight:
    """The weight of every year of the profile from its firmly dated forms.

    The parts of one assembly count as one witness, by the mean of their log likelihoods, since they may have come
    together from one donor; ``one_by_one`` lets each count for itself.
    """
    witnesses = [_witness(profile, part) for part in parts if part.firm and part.forms]
    sums = [_sums(profile, witnesses, factor, one_by_one) for factor in (1.0, 0.5, 2.0)]
    plain, halved, doubled = (_against_the_rest(one) for one in sums)
    ranking = _ranked(plain)
    steady = ranking == _ranked(halved) == _ranked(doubled)
    lead = plain_lead(sums[0], ranking)
    assumption = _assumption(witnesses, one_by_one)
    first_holds = len({_ranked(one)[:1] for one in (plain, halved, doubled)}) == 1
    return Weight(
        plain, halved, doubled, assumption, ranking, steady,
        _sentence(plain, ranking, witnesses), _reasons(witnesses, steady, first_holds), lead,
        len(witnesses if one_by_one else {w.assembly for w in witnesses}),
    )  # fmt: skip


def plain_lead(sums: Mapping[int, float], ranking: Sequence[int]) -> float:
    """Decibans by which the first of the ranking outweighs the second; 0 where there is no second."""
    if len(ranking) < 2:
        return 0.0
    return DECIBANS * (sums[ranking[0]] - sums[ranking[1]])


def _sums(profile: Profile, witnesses: list[Witness], factor: float, one_by_one: bool) -> dict[int, float]:
    """The sum of the witnesses' log likelihoods for each year."""
    grouped: dict[str, list[Witness]] = {}
    for witness in witnesses:
        grouped.setdefault(witness.part if one_by_one else witness.assembly, []).append(witness)
    means = []
    for own in grouped.values():
        steps = [0.0] * (len(profile.years) + 1)
        for witness in own:
            witness.add_to(steps, factor)
        means.append([value / len(own) for value in accumulate(steps)])
    return {year: fsum(mean[n] for mean in means) for n, year in enumerate(profile.years)}


def _ranked(weights: Mapping[int, float]) -> tuple[int, ...]:
    # Rounded, so that years that weigh the same stand in their own order whatever the last binary digit says.
    return tuple(sorted(weights, key=lambda year: (-round(weights[year], 9), year)))


def _witness(profile: Profile, part: DatedPart) -> Witness:
    item = profile.item_by_id[part.item]
    forms = [item.form_by_id[one] for one in part.forms]
    pieces = pieces_of(profile, item, forms[0]) if len(forms) == 1 else mean_pieces(profile, item, forms)
    swap = USUAL_SWAP if item.swap_rate is None else item.swap_rate
    return Witness(part.id, item.assembly, pieces, 1 / len(item.variants), swap, item.swap_rate is None)


def _assumption(witnesses: Sequence[Witness], one_by_one: bool) -> Say:
    assumed = sum(w.assumed for w in witnesses)
    how = (
        say("every part counts for itself")
        if one_by_one
        else say("the parts of one assembly count as one witness, since they may have come together")
    )
    rates = say("a part is found replaced as often as the profile says")
    if assumed:
        rates = say(
            "a part is found replaced as often as the profile says, and where it says nothing ({count} of {all}) "
            "in {percent} of 100 machines",
            count=assumed, all=len(witnesses), percent=round(100 * USUAL_SWAP),
        )  # fmt: skip
    return say(
        "Assumed: {rates}; a replaced part may be any of the forms that the profile lists; {how}. Numbers and date "
        "codes are not weighed. It weighs one year against the others and says nothing else about the machine.",
        rates=rates, how=how,
    )  # fmt: skip


def _sentence(weights: Mapping[int, float], ranking: Sequence[int], witnesses: Sequence[Witness]) -> Say:
    if not witnesses:
        return say("Weight of evidence: nothing to weigh yet.")
    first = [year for year in ranking if abs(weights[year] - weights[ranking[0]]) < 1e-9]
    if len(first) == len(ranking):
        return say("Weight of evidence: every year weighs the same.")
    if len(first) > 1:
        years = listed([str(year) for year in first])
        return say("Weight of evidence: {years} weigh the same, {weight}.", years=years, weight=_db(weights[first[0]]))
    told = [say("{year} {weight}", year=year, weight=_db(weights[year])) for year in ranking[:TOLD]]
    return say("Weight of evidence: {years}.", years=joined(told, ", then "))


def _db(value: float) -> Say:
    return say("{decibans} decibans", decibans=f"{value:+.1f}".replace("-", "\N{MINUS SIGN}"))


def _reasons(witnesses: Sequence[Witness], steady: bool, first_holds: bool) -> tuple[Say, ...]:
    if not witnesses:
        return (say("No form with years and a source better than memory was found fitted."),)
    count = say("Weighed: {count} firmly dated forms.", count=count_word(len(witnesses)))
    if len(witnesses) == 1:
        count = say("Weighed: one firmly dated form.")
    if steady:
        holds = say("The order of the years holds with parts replaced half or twice as often.")
    elif first_holds:
        holds = say("With parts replaced half or twice as often the first year stays first; others change places.")
    else:
        holds = say("The order does not hold: with parts replaced half or twice as often another year comes first.")
    return count, holds
