"""What the judgement says of numbers, in the words of the page."""

from collections.abc import Iterable, Sequence

from inspector.judgement.decode import Decoded, Hit, Outcome
from inspector.judgement.decoded_words import TO, built_words, condition_words, serial_words
from inspector.judgement.judge import Judgement
from inspector.judgement.papers import PaperStanding
from inspector.judgement.relations import Stand
from inspector.judgement.year_words import years_words
from inspector.profile.model import Profile, Source
from inspector.record.claim import Paper
from inspector.texts import tr, trn
from inspector.window.desk import Desk

SIGNS = {
    Stand.AGREE: "agree as read", Stand.AGREE_IF: "agree if", Stand.DISAGREE: "disagree as read",
    Stand.CLOSE: "close as usual", Stand.UNUSUAL: "unusual gap", Stand.DIFFER: "differ, as built",
    Stand.NO_RULE: "cannot compare", Stand.CANNOT: "cannot compare", Stand.SLIP: "one slip",
}  # fmt: skip


def capital(text: str) -> str:
    """The text with a large first letter."""
    return text[:1].upper() + text[1:]


def grouped(number: int) -> str:
    """The number with a narrow space between thousands."""
    return f"{number:,}".replace(",", "\u2009")


def built(hit: Hit) -> str:
    """When it was built, by this hit, in words; nothing where it does not say."""
    return tr("built {when}", when=tr(built_words(hit.built))) if hit.built else ""


def condition(hit: Hit) -> str:
    """What the one doubtful figure would have to be: "if 8"; nothing where there are none or several."""
    return tr("if {figure}", figure=hit.if_figures[0][1]) if len(hit.if_figures) == 1 else ""


def serial(hit: Hit) -> str:
    """The serial as it stands on the metal, or from which to which; nothing where the number has none."""
    if hit.first_serial is None or hit.last_serial is None or not any(field.counts for field in hit.fields):
        return ""
    ends = serial_words(hit).replace(" ", "\u2009").split(TO)
    return ends[0] if len(ends) == 1 else tr("{first} to {last}", first=ends[0], last=ends[1])


def title(hit: Hit) -> str:
    """What the number says by this hit: serial, model year, model."""
    years = tr("{years} model", years=tr(years_words(hit.years))) if hit.years else ""
    if not years and hit.built:
        years = capital(built(hit))
    words = ": ".join(part for part in (serial(hit), years) if part)
    rest = ", ".join([*hit.models, *(tr("for {market}", market=market) for market in hit.markets)])
    said = "; ".join(part for part in (words, rest) if part) or hit.says
    return said or "; ".join(field.means for field in hit.fields if field.means) or hit.title


def second(hit: Hit) -> str:
    """What stands below: what several figures would have to be, when it was built, how many numbers remain."""
    words = [tr(condition_words(hit.if_figures))] if len(hit.if_figures) > 1 else []
    words += [built(hit)] if hit.years else []
    if hit.serials > 1:
        words.append(_remaining(hit.serials))
    if hit.inferred:
        words.append(tr("worked out from other figures"))
    said = hit.says if hit.says and hit.says != title(hit) else ""
    return "; ".join(part for part in (*words, said) if part)


def remain(decoded: Decoded) -> str:
    """How many numbers remain, where it is not one; how it stands where no rule reads it."""
    if decoded.outcome is Outcome.OUTSIDE and not (decoded.nearest and decoded.nearest.follows):
        return tr("follows no known rule")
    if decoded.outcome is not Outcome.DECODED:
        return tr(decoded.outcome.value)
    return _remaining(decoded.serials) if decoded.serials != 1 else ""


def _remaining(count: int) -> str:
    return trn("{number} number remains", "{number} numbers remain", count, number=grouped(count))


def sources(profile: Profile, keys: Iterable[str]) -> list[Source]:
    """The sources with these ids, the best first."""
    found = [profile.source_by_id[key] for key in dict.fromkeys(keys) if key in profile.source_by_id]
    return sorted(found, key=lambda source: -source.grade)


def paper_words(desk: Desk, paper: Paper) -> str:
    """How the numbers that a paper quotes stand, in a few words; the rest stands where the paper is open."""
    found = papers_of(desk.judgement, paper.id)
    if found:
        return "; ".join(dict.fromkeys(tr(standing.sentence).split(":")[0] for standing in found))
    return "" if paper.quoted else tr("not tied to this machine")


def papers_of(judged: Judgement, paper: str) -> Sequence[PaperStanding]:
    """How each number that this paper quotes stands, in the order quoted."""
    return [standing for standing in judged.papers if standing.paper == paper]
