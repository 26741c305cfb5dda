"""What is still open, each with the step that would settle it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from inspector.judgement.differences import differences
from inspector.judgement.open_figures import open_figures
from inspector.judgement.state import states
from inspector.judgement.wording import concluded_words, first_sentence, fitted_variant, joined, lower_first
from inspector.profile.expected import applies
from inspector.record.words import Conclusion, Mark, Seen, Sureness
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.judgement.differences import Difference
    from inspector.judgement.relations import Standing
    from inspector.judgement.state import ItemState
    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record

NO_NEXT_STEP = "no next step recorded"
READ_AGAIN = "Read both again with the lamp from the other side, and ask what is known of it."
UNSURE = frozenset({Conclusion.NOT_IDENTIFIED, Conclusion.NEEDS_BOOK, Conclusion.YEAR_NOT_SHOWN})


@dataclass(frozen=True, slots=True)
class OpenQuestion:
    """A question, the step that would settle it ("no next step recorded" where none is), and its item or "".

    ``short`` is the question without what the finding's note says, for where the finding itself stands as well.
    ``place`` is the numbered place that it is about, or "".
    """

    text: Say
    next_step: str
    item: str
    needs_next_step: bool
    short: Say | None = None
    place: str = ""


def questions(
    profile: Profile,
    record: Record,
    known: Mapping[str, ItemState] | None = None,
    standings: tuple[Standing, ...] = (),
    differing: tuple[Difference, ...] | None = None,
) -> tuple[OpenQuestion, ...]:
    """Everything open: by item in the profile's order, then figures and numbers, then what was written by hand."""
    at = states(profile, record) if known is None else known
    apart = differences(profile, record, at) if differing is None else differing
    told = {d.item: d.sentence for d in apart}
    by_item = [q for state in at.values() if state.findings for q in _of_item(profile, record, state, told)]
    figures = [replace(_question(text, None, "", ""), place=place) for place, text in open_figures(profile, record)]
    numbers = [_of_standing(standing) for standing in standings if standing.raises]
    hand = [
        _question(say("{text}", text=q.text), None, q.next_step, q.item)
        for q in record.questions
        if not q.closed.strip()
    ]
    return (*by_item, *figures, *numbers, *hand)


def _of_standing(standing: Standing) -> OpenQuestion:
    first, second = standing.names
    text = say("{first} and {second}: {sentence}.", first=first, second=lower_first(second), sentence=standing.sentence)
    return replace(_question(text, None, READ_AGAIN, ""), place=standing.places[0])


def unsure(finding: Finding) -> bool:
    """True when the person has not settled it: a doubt, a conclusion less than sure, or one that says so itself."""
    if finding.mark is Mark.DOUBT and finding.seen is Seen.EXAMINED:
        return True
    return any(c.sureness is not Sureness.SURE or c.what in UNSURE for c in finding.conclusions)


def _of_item(profile: Profile, record: Record, state: ItemState, told: Mapping[str, Say]) -> Iterable[OpenQuestion]:
    item = profile.item_by_id[state.item]
    step = next((f.next_step for f in state.findings if f.next_step.strip()), "")
    several = len(state.findings) > 1
    for finding in state.findings:
        if unsure(finding):
            yield _question(*_doubt(record, item, finding, several=several), finding.next_step, item.id)
    if item.id in told:
        yield _question(told[item.id], None, step, item.id)
    year = record.claim.model_year
    for text in (_not_standard(item, state), _too_early(item, state, year), *_disputed(item, state)):
        if text is not None:
            yield _question(text, None, step, item.id)


def _question(text: Say, short: Say | None, step: str, item: str) -> OpenQuestion:
    given = step.strip()
    return OpenQuestion(text, given or NO_NEXT_STEP, item, not given, short)


def _doubt(record: Record, item: Item, finding: Finding, *, several: bool) -> tuple[Say, Say]:
    """What is not settled, with the first sentence of the note and without."""
    parts: list[Say | str] = [concluded_words(c) for c in finding.conclusions]
    if finding.mark is not None:
        parts.insert(0, say(finding.mark.value))
    person = record.name_of(finding.by) if several else None
    short = _of_person(item, joined(parts), person)
    note = first_sentence(finding.note)
    return (_of_person(item, joined([*parts, note]), person), short) if note else (short, short)


def _of_person(item: Item, words: Say, person: str | None) -> Say:
    if person is not None:
        return say("{item}: {words} ({person}).", item=item.name, words=words, person=person)
    return say("{item}: {words}.", item=item.name, words=words)


def _not_standard(item: Item, state: ItemState) -> Say | None:
    if not state.standard_absent:
        return None
    return say("{item}: said not to be fitted to this version, but the profile has it as standard.", item=item.name)


def _too_early(item: Item, state: ItemState, year: int | None) -> Say | None:
    looked = any(f.seen is Seen.EXAMINED for f in state.findings)
    if applies(item, year) or not looked:
        return None
    return say("{item}: something was found, but machines of {year} did not have it.", item=item.name, year=year)


def _disputed(item: Item, state: ItemState) -> list[Say]:
    fitted = {v.id: v for f in state.findings if (v := fitted_variant(item, f)) and v.disputed}
    return [
        say("{item}: the sources disagree on {form}. {note}", item=item.name, form=v.name, note=v.note)
        if v.note
        else say("{item}: the sources disagree on {form}.", item=item.name, form=v.name)
        for v in fitted.values()
    ]
