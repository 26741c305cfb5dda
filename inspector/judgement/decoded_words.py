"""A decoded number in words: one sentence for a page or sheet, and the parts of a hit for a row."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.decode import Outcome
from inspector.judgement.wording import joined
from inspector.judgement.year_words import listed, years_words
from inspector.texts import MONTHS, Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from inspector.judgement.decode import Decoded, Hit
    from inspector.profile.model import Profile

_MOST_SAID = 3
TO = "–"  # from the smallest to the largest serial
_GROUP = 3


def decoded_words(profile: Profile, decoded: Decoded) -> Say | None:
    """What the number says, in one sentence; None where there is nothing to say of it."""
    match decoded.outcome:
        case Outcome.NOTHING:
            return None
        case Outcome.NO_RULE:
            return say("No rule of this place is known.")
        case Outcome.OUTSIDE:
            return outside_words(decoded)
    told = answers(decoded.hits)
    if len(told) == 1:
        return _one(profile, decoded, told[0])
    if len(told) <= _MOST_SAID:
        each = [_short(profile, decoded, answer) for answer in told]
        possibilities = joined(each, "; or ")
        if all(answer.hit.serials == 1 for answer in told):
            return say("{possibilities}.", possibilities=possibilities)
        count = grouped(str(decoded.serials))
        return say("{count} numbers remain, {possibilities}.", count=count, possibilities=possibilities)
    return _many(decoded, len(told))


@dataclass(frozen=True, slots=True)
class Answer:
    """A hit, with the sources of all hits that say the same of the same numbers."""

    hit: Hit
    sources: tuple[str, ...]


def answers(hits: Iterable[Hit]) -> tuple[Answer, ...]:
    """The hits, those that say the same on the same condition told once with all their sources."""
    alike: dict[tuple[object, ...], list[Hit]] = {}
    for hit in hits:
        same = (hit.first_serial, hit.last_serial, hit.years, hit.built, hit.models, hit.markets, hit.says)
        alike.setdefault((*same, hit.if_figures, hit.fields), []).append(hit)
    return tuple(
        Answer(some[0], tuple(dict.fromkeys(source for hit in some for source in hit.sources)))
        for some in alike.values()
    )


def outside_words(decoded: Decoded) -> Say:
    """That no rule reads the number or no block holds it, with the rule that it came nearest."""
    near = decoded.nearest
    if near is None:
        return say("{typed} follows no known rule, and comes near none.", typed=decoded.typed)
    title, how = near.title, near.sentence
    if near.follows:
        return say('{typed} is outside every known block. Nearest is "{title}": {how}.',
                   typed=decoded.typed, title=title, how=how)  # fmt: skip
    return say('{typed} follows no known rule. Nearest is "{title}": {how}.',
               typed=decoded.typed, title=title, how=how)  # fmt: skip


def _one(profile: Profile, decoded: Decoded, told: Answer) -> Say:
    hit = told.hit
    by, number, answer = sources_words(profile, told.sources), _number(decoded, hit), hit_words(hit)
    if hit.serials > 1:
        return say("{count} numbers remain, {number}: {answer} ({by}).",
                   count=grouped(str(hit.serials)), number=number, answer=answer, by=by)  # fmt: skip
    if hit.years and hit.row is not None:
        return say("{number} is in the block of the {answer} ({by}).", number=number, answer=answer, by=by)
    return say("{number}: {answer} ({by}).", number=number, answer=answer, by=by)


def _short(profile: Profile, decoded: Decoded, told: Answer) -> Say:
    hit = told.hit
    number, answer, by = _number(decoded, hit), hit_words(hit), sources_words(profile, told.sources)
    if hit.if_figures:
        return say("{number}, {condition}: {answer} ({by})",
                   number=number, condition=condition_words(hit.if_figures), answer=answer, by=by)  # fmt: skip
    return say("{number}: {answer} ({by})", number=number, answer=answer, by=by)


def _number(decoded: Decoded, hit: Hit) -> str:
    """The serial where blocks count it, else the number as typed."""
    return serial_words(hit) if hit.row is not None else decoded.typed


def _many(decoded: Decoded, possibilities: int) -> Say:
    if decoded.serials == 1:
        return say("One number, {possibilities} possibilities: model years {years}.",
                   possibilities=possibilities, years=years_words(decoded.years) or say("not given"))  # fmt: skip
    count = grouped(str(decoded.serials))
    if not decoded.years:
        return say("{count} numbers remain.", count=count)
    return say("{count} numbers remain, of the model years {years}.", count=count, years=years_words(decoded.years))


def hit_words(hit: Hit) -> Say:
    """The answer of one hit: model, market, model year and when it was built; else what its codes mean."""
    parts: list[Say | str] = []
    if hit.years:
        parts.append(_model_years(hit.years))
    parts += [*(("/".join(hit.models),) if hit.models else ()), *hit.markets]
    if hit.built:
        parts.append(say("built {months}", months=built_words(hit.built)))
    parts += [text for text in (hit.says,) if text]
    if not parts:
        parts = [field.means for field in hit.fields if field.means] or [hit.title]
    return joined(parts)


def _model_years(years: Sequence[int]) -> Say:
    if len(years) == 1:
        return say("{year} model", year=years[0])
    return say("models of {years}", years=years_words(years))


def serial_words(hit: Hit) -> str:
    """The serial as it is told, in groups of three; the smallest and largest where several remain.

    Figures stamped directly before it, as a leading 0, are told with it.
    """
    at = next((n for n, field in enumerate(hit.fields) if field.counts), None)
    if at is None or hit.first_serial is None or hit.last_serial is None:
        return "".join(field.text for field in hit.fields)
    front = hit.fields[at - 1].text if at and hit.fields[at - 1].text.isdigit() else ""
    width = hit.fields[at].end - hit.fields[at].start
    ends = dict.fromkeys((hit.first_serial, hit.last_serial))
    return TO.join(grouped(f"{front}{str(serial).zfill(width)}") for serial in ends)


def grouped(figures: str) -> str:
    """The figures in groups of three from the right, from five figures on."""
    if len(figures) <= _GROUP + 1:
        return figures
    at = len(figures) % _GROUP
    groups = [figures[:at]] if at else []
    return " ".join([*groups, *(figures[n : n + _GROUP] for n in range(at, len(figures), _GROUP))])


def built_words(built: Iterable[tuple[str, str]]) -> Say:
    """The months of building: "October 1952", "August to December 1951 or March 1962"."""
    return joined([_span(first, last) for first, last in built], " or ")


def _span(first: str, last: str) -> Say:
    (year, month), (to_year, to_month) = (map(int, text.split("-")) for text in (first, last))
    if first == last:
        return say("{month} {year}", month=MONTHS[month - 1], year=year)
    if year != to_year:
        return say("{first} to {last}", first=_span(first, first), last=_span(last, last))
    if (month, to_month) == (1, len(MONTHS)):
        return say("{year}", year=year)
    return say("{first} to {last} {year}", first=MONTHS[month - 1], last=MONTHS[to_month - 1], year=year)


def condition_words(figures: Sequence[tuple[int, str]]) -> Say:
    """The condition in words: "if figure 5 is 8 and figure 7 is 1"."""
    each = [say("figure {number} is {figure}", number=number, figure=figure) for number, figure in figures]
    return say("if {conditions}", conditions=listed(each))


def sources_words(profile: Profile, sources: Sequence[str]) -> Say:
    """The kinds of the sources, best first: "factory list, club register"; "no source" where there is none."""
    known = sorted((profile.source_by_id[s] for s in sources if s in profile.source_by_id), key=lambda s: -s.grade)
    return joined([say(kind) for kind in dict.fromkeys(source.kind.value for source in known)] or [say("no source")])


def decoded_lines(profile: Profile, decoded: Decoded) -> tuple[Say, ...]:
    """Everything known of the number, a sentence each.

    First the answer, then every possibility with who says so, how many numbers remain, where the sources disagree, and
    what was assumed.
    """
    head = decoded_words(profile, decoded)
    lines = [head if head is not None else say("Nothing was read.")]
    told = answers(decoded.hits)
    lines += [_possibility(profile, decoded, one) for one in told]
    if decoded.hits:
        lines.append(say("Numbers that remain: {count}", count=grouped(str(decoded.serials))))
    lines += [decoded.disagreement] if decoded.disagreement is not None else []
    return (*lines, *(decoded.reasons if decoded.hits else ()))


def _possibility(profile: Profile, decoded: Decoded, told: Answer) -> Say:
    hit = told.hit
    known = profile.source_by_id
    sources = [
        say("{title} ({kind})", title=known[one].title, kind=say(known[one].kind.value))
        for one in told.sources
        if one in known
    ] or [say("no source")]
    line = say(
        '{number}: {answer}. Rule "{title}"; {sources}.',
        number=_number(decoded, hit),
        answer=hit_words(hit),
        title=hit.title,
        sources=joined(sources, "; "),
    )
    if hit.if_figures:
        line = say("{line} Only {condition}.", line=line, condition=condition_words(hit.if_figures))
    return say("{line} {note}", line=line, note=hit.note) if hit.note else line
