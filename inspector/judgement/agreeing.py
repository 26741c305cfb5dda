"""Where the sources of a number disagree, overlap or leave it out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.ranges import smallest
from inspector.judgement.remaining import Count, Letters
from inspector.judgement.wording import joined
from inspector.judgement.year_words import listed, years_words
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from inspector.judgement.blocks import Block
    from inspector.judgement.hits import Found, Hit
    from inspector.profile.model import Profile


Pair = tuple["Found", "Found"]


def differing(found: Sequence[Found]) -> tuple[Pair, ...]:
    """Pairs that hold a number in common and give it to different model years, in one market or in none."""
    pairs: list[Pair] = []
    open_pairs: list[Found] = []
    for one in sorted((one for one in found if one.hit.years), key=lambda one: one.hit.first_serial or 0):
        first = one.hit.first_serial
        open_pairs = [other for other in open_pairs if first is None or (other.hit.last_serial or first) >= first]
        pairs += [(other, one) for other in open_pairs if _apart(other.hit, one.hit) and _meet(other, one)]
        open_pairs.append(one)
    return tuple(pairs)


def _apart(a: Hit, b: Hit) -> bool:
    return not set(a.years) & set(b.years) and a.markets == b.markets


def disagreement(profile: Profile, pairs: Sequence[Pair]) -> Say | None:
    """What the sources say that give the same number to different model years; None where they agree."""
    apart = [one for a, b in pairs if not set(a.hit.sources) & set(b.hit.sources) for one in (a, b)]
    if not apart:
        return None
    by_years: dict[tuple[int, ...], dict[str, None]] = {}
    for one in apart:
        by_years.setdefault(one.hit.years, {}).update(dict.fromkeys(one.hit.sources))
    each = [
        say("{years} by {sources}", years=years_words(years), sources=listed(titles(profile, sources)))
        for years, sources in sorted(by_years.items())
    ]
    return say("The sources disagree: {each}.", each=joined(each, "; "))


def overlapping(pairs: Sequence[Pair]) -> bool:
    """True when blocks by one source give the same number to different model years."""
    return any(set(a.hit.sources) & set(b.hit.sources) for a, b in pairs)


def _meet(a: Found, b: Found) -> bool:
    """True when some number is in both: stretch by stretch, as the two divide the figures alike."""
    if len(a.cover) != len(b.cover):
        return False
    return all(_stretches_meet(one, other) for one, other in zip(a.cover, b.cover, strict=True))


def _stretches_meet(one: Letters | Count, other: Letters | Count) -> bool:
    if (one.start, one.end) != (other.start, other.end):
        return False
    if isinstance(one, Letters) or isinstance(other, Letters):
        return isinstance(one, Letters) and isinstance(other, Letters) and bool(one.texts & other.texts)
    sets = tuple("".join(sorted(set(a) & set(b))) for a, b in zip(one.sets, other.sets, strict=True))
    return any(
        smallest(sets, max(low, least), min(high, most)) is not None
        for low, high in one.spans
        for least, most in other.spans
    )


def titles(profile: Profile, sources: Iterable[str]) -> list[Say | str]:
    """The sources by their titles; "no source" where there is none."""
    known = profile.source_by_id
    return [known[one].title if one in known else one for one in sources] or [say("no source")]


def left_out(profile: Profile, found: Sequence[Found], rows: Sequence[Block]) -> Iterator[Say]:
    """One sentence for each source whose own list goes past the number, below and above, without holding it."""
    for one in found:
        first, last, block = one.hit.first_serial, one.hit.last_serial, one.block
        if block is None or first is None or last is None:
            continue
        alike = [row for row in rows if (row.prefix, row.suffix) == (block.prefix, block.suffix)]
        for source in dict.fromkeys(source for row in alike for source in row.sources):
            gap = _gap([span for row in alike if source in row.sources for span in row.spans], first, last)
            if gap is not None:
                yield _left_out(titles(profile, [source])[0], *gap)


def _gap(spans: Sequence[tuple[int, int]], first: int, last: int) -> tuple[int, int] | None:
    """The numbers that no span holds, around first to last; None unless there are spans on both sides and none in."""
    below = [high for _, high in spans if high < first]
    above = [low for low, _ in spans if low > last]
    if not below or not above or len(below) + len(above) < len(spans):
        return None
    return max(below) + 1, min(above) - 1


def _left_out(source: Say | str, first: int, last: int) -> Say:
    if first == last:
        return say("{source} leaves {first} out.", source=source, first=first)
    if last == first + 1:
        return say("{source} leaves {first} and {last} out.", source=source, first=first, last=last)
    return say("{source} leaves {first} to {last} out.", source=source, first=first, last=last)
