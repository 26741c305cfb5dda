"""How the numbers of two places stand to each other, in graded words, each with how both were read."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import combinations
from typing import TYPE_CHECKING

from inspector.judgement.comparing import if_figures, if_sides
from inspector.judgement.relation_words import covers_all_years, how_words, open_year_words, read_words, rule_words
from inspector.judgement.sides import Side, identity_places, sides_of
from inspector.judgement.stand import Stand
from inspector.judgement.verdicts import Verdict, verdict
from inspector.judgement.wording import joined
from inspector.profile.expected import grade_of
from inspector.profile.words import RelationKind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from inspector.judgement.decode import Decoded
    from inspector.profile.model import Profile
    from inspector.profile.numbers import Relation
    from inspector.record.model import Record

__all__ = ["Stand", "Standing", "relations"]


@dataclass(frozen=True, slots=True)
class Standing:
    """How two places stand: the word, a sentence ("agree if figure 5 is 8"), and the rule with both readings.

    ``raises`` marks a question to ask. ``gap`` is the second serial less the first, ``expected_gap`` what is usual
    there; both None where no single gap is known. ``if_figures`` are the conditions as number and characters, and
    ``if_places`` the place each belongs to. ``traps`` are ids of traps that speak of both places. ``details`` are the
    sentences of ``detail`` one by one.
    """

    places: tuple[str, str]
    names: tuple[str, str]
    stand: Stand
    sentence: Say
    detail: Say
    raises: bool
    gap: int | None
    expected_gap: int | None
    if_figures: tuple[tuple[int, str], ...]
    if_places: tuple[str, ...]
    kind: RelationKind | None
    sources: tuple[str, ...]
    grade: int
    traps: tuple[str, ...]
    details: tuple[Say, ...] = ()


def relations(
    profile: Profile, record: Record, decoded: Mapping[str, Decoded], known: Mapping[str, Side] | None = None
) -> tuple[Standing, ...]:
    """Every related pair of places in the claimed year, then identity places both read that no relation names.

    Those that raise a question come first, else the profile's order. Without a claimed year, what the relations of
    every period say. ``decoded`` holds what the readings say by rule, by reading id.
    """
    sides = sides_of(profile, record, decoded) if known is None else known
    table = _Table(profile, record.claim.model_year, sides)
    found = (*(one for group in _groups(profile) for one in table.of_pair(group)), *table.unrelated())
    return (*(one for one in found if one.raises), *(one for one in found if not one.raises))


def _groups(profile: Profile) -> Iterable[tuple[Relation, ...]]:
    """The relations of each pair of places, in the profile's order of first mention."""
    found: dict[frozenset[str], list[Relation]] = {}
    for relation in profile.relations:
        found.setdefault(frozenset(relation.places), []).append(relation)
    return (tuple(group) for group in found.values())


@dataclass(frozen=True, slots=True)
class _Table:
    profile: Profile
    year: int | None
    sides: Mapping[str, Side]

    def of_pair(self, group: tuple[Relation, ...]) -> Iterable[Standing]:
        """The pair's standings: one for each relation that holds in the claimed year."""
        if self.year is None:
            yield self._without_year(group)
            return
        holding = tuple(r for r in group if r.years.holds(self.year))
        known = [r for r in holding if r.kind is not RelationKind.UNKNOWN]
        for relation in known or holding[:1]:
            yield self._standing(relation, self._verdict(relation), holding)
        if not holding and self._bears(group[0].places):
            yield self._no_rule(group[0].places, say("no rule for {year}", year=self.year))

    def unrelated(self) -> Iterable[Standing]:
        """Identity places both read that no relation names."""
        known = {frozenset(relation.places) for relation in self.profile.relations}
        for one, other in combinations([place.id for place in self.profile.places], 2):
            if frozenset((one, other)) not in known and self._bears((one, other)):
                yield self._no_rule((one, other), say("no rule: the profile says nothing of the two"))

    def _bears(self, places: tuple[str, str]) -> bool:
        """Whether both places bear on what the machine is, and were read."""
        bearing = identity_places(self.profile)
        return all(place in bearing and self.sides[place].pattern is not None for place in places)

    def _pair(self, places: tuple[str, str]) -> tuple[Side, Side]:
        one, other = (
            self.sides.get(p) or Side(p, p, missing=say("the {place} was not looked for", place=p)) for p in places
        )
        return one, other

    def _verdict(self, relation: Relation) -> Verdict:
        return verdict(relation, *self._pair(relation.places))

    def _without_year(self, group: tuple[Relation, ...]) -> Standing:
        """The pair's standing where no year is claimed: what every period says."""
        found = [self._verdict(relation) for relation in group]
        for relation, one in zip(group, found, strict=True):
            if one.stand is Stand.CANNOT:  # there is nothing to compare in any year
                return self._standing(relation, one, (relation,))
        alike = len({(v.stand, str(v.sentence)) for v in found}) == 1
        if alike and covers_all_years(self.profile, group):
            return self._standing(group[0], found[0], group[:1])
        told = open_year_words(self.profile, group, [v.sentence for v in found])
        open_ = Verdict(Stand.CANNOT, told, all(v.raises for v in found))
        return self._made(group[0].places, open_, self._read(group[0].places, open_), None)

    def _standing(self, relation: Relation, found: Verdict, holding: Sequence[Relation]) -> Standing:
        detail = (*rule_words(self.profile, relation, holding), *found.more, *self._read(relation.places, found))
        if found.raises and any(other.kind is not relation.kind for other in holding):
            found = replace(found, sentence=say("{sentence}; the sources differ on the rule", sentence=found.sentence))
        return self._made(relation.places, found, detail, relation)

    def _no_rule(self, places: tuple[str, str], told: Say) -> Standing:
        found = Verdict(Stand.NO_RULE, told)
        return self._made(places, found, self._read(places, found), None)

    def _read(self, places: tuple[str, str], found: Verdict) -> tuple[Say, ...]:
        """How both were read; and where that raises a question, which traps speak of both."""
        read = read_words(self._pair(places), guessed=found.stand not in (Stand.NO_RULE, Stand.CANNOT))
        if not found.raises:
            return read
        traps = [trap.title.rstrip(".") for trap in self.profile.traps if trap.id in self._traps(places)]
        return (*read, *(say("Known to mislead: {trap}.", trap=trap) for trap in traps))

    def _made(
        self, places: tuple[str, str], found: Verdict, detail: tuple[Say, ...], relation: Relation | None
    ) -> Standing:
        return Standing(
            places=places,
            names=self._names(places),
            stand=found.stand,
            sentence=how_words(found.sentence, self._pair(places)),
            detail=joined(detail, " "),
            raises=found.raises,
            gap=found.gap,
            expected_gap=found.expected_gap,
            if_figures=if_figures(found.conditions),
            if_places=tuple(places[side] for side in if_sides(found.conditions)),
            kind=relation.kind if relation else None,
            sources=relation.sources if relation else (),
            grade=grade_of(self.profile, relation) if relation else 0,
            traps=self._traps(places),
            details=detail,
        )

    def _names(self, places: tuple[str, str]) -> tuple[str, str]:
        one, other = (self.profile.place_by_id[p].name if p in self.profile.place_by_id else p for p in places)
        return one, other

    def _traps(self, places: tuple[str, str]) -> tuple[str, ...]:
        return tuple(
            trap.id
            for trap in self.profile.traps
            if set(places) <= set(trap.places) and (self.year is None or trap.years.holds(self.year))
        )
