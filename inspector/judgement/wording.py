"""Small pieces of sentences: joining, first sentences, and a finding in words."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from inspector.record.words import Condition, Sureness
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.profile.items import Item, Variant
    from inspector.profile.model import Profile
    from inspector.record.finding import Concluded, Finding


def joined(parts: Sequence[Say | str], separator: str = ", ") -> Say:
    """The parts one after the other as one sentence part; people's own words among them stay untranslated."""
    if len(parts) == 1 and isinstance(parts[0], Say):
        return parts[0]
    template, names = _fields(len(parts), separator)
    return Say(template, dict(zip(names, parts, strict=True)))


@lru_cache(maxsize=256)
def _fields(count: int, separator: str) -> tuple[str, tuple[str, ...]]:
    """So many fields as a template, and their names."""
    names = tuple(f"p{number}" for number in range(count))
    return separator.join(f"{{{name}}}" for name in names), names


def first_sentence(text: str) -> str:
    """The text up to its first full stop or line end, without that stop."""
    line = text.strip().split("\n", 1)[0]
    return line.split(". ", 1)[0].rstrip(". ")


def lower_first(text: str) -> str:
    """The text with a small first letter, unless its first word is written in capitals or figures."""
    return text[0].lower() + text[1:] if text[1:2].islower() else text


def name_of(profile: Profile, item: str) -> str:
    """The item's name, or its id where the profile does not know it."""
    known = profile.item_by_id.get(item)
    return known.name if known else item


def fitted_variant(item: Item | None, finding: Finding) -> Variant | None:
    """The form the finding names as fitted, or None."""
    return item.form_by_id.get(finding.fitted) if item is not None and finding.fitted else None


def concluded_words(concluded: Concluded) -> Say:
    """The conclusion, with how sure the person is where not sure."""
    word = say(concluded.what.value)
    if concluded.sureness is Sureness.SURE:
        return word
    return say("{conclusion} ({sureness})", conclusion=word, sureness=say(concluded.sureness.value))


def condition_words(finding: Finding) -> tuple[Say, ...]:
    """The conditions found, sound left out."""
    return tuple(say(c.value) for c in finding.conditions if c is not Condition.SOUND)


def finding_words(item: Item | None, finding: Finding) -> Say:
    """The finding in short: mark or seen state, conclusions, fitted form."""
    parts: list[Say | str] = [say(finding.mark.value if finding.mark else finding.seen.value)]
    parts += [concluded_words(c) for c in finding.conclusions]
    variant = fitted_variant(item, finding)
    if variant is not None:
        parts.append(variant.name)
        if variant.years is not None:
            parts.append(span_words(variant.years.first, variant.years.last))
    elif finding.fitted_other:
        parts.append(finding.fitted_other)
    return joined(parts)


def span_words(first: int | None, last: int | None) -> Say:
    """Years or serials from first to last in words, open ends named."""
    if first is None and last is None:
        return say("all years")
    if first is None:
        return say("up to {last}", last=last)
    if last is None:
        return say("from {first}", first=first)
    return say("{first}", first=first) if first == last else say("{first}–{last}", first=first, last=last)
