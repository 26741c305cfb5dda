"""Words that people see: written in English in the code, translated where they are shown."""

from __future__ import annotations

import gettext
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Mapping

DOMAIN = "inspector"


@dataclass(frozen=True, slots=True)
class Say:
    """A sentence with its values apart, so that whoever shows it can translate it.

    ``template`` holds ``{name}`` fields; a value may be a ``Say`` itself.
    """

    template: str
    values: Mapping[str, Any] = field(default_factory=dict)

    def __str__(self) -> str:
        return fill(self.template, self.values)

    def __hash__(self) -> int:
        return hash((self.template, str(self)))


def say(template: str, /, **values: Any) -> Say:
    """The sentence of this template and these values, not yet in any language."""
    return Say(template, values)


MONTHS = (
    say("January"), say("February"), say("March"), say("April"), say("May"), say("June"), say("July"),
    say("August"), say("September"), say("October"), say("November"), say("December"),
)  # fmt: skip


def fill(template: str, values: Mapping[str, Any]) -> str:
    """The template with its fields filled; a template without values is taken as it stands."""
    if not values:
        return template
    return template.format_map({key: tr(value) if isinstance(value, Say) else value for key, value in values.items()})


@lru_cache(maxsize=1)
def _catalogue() -> gettext.NullTranslations:
    from inspector.resource import resource

    try:
        folder = str(resource("translations"))
    except FileNotFoundError:
        return gettext.NullTranslations()
    return gettext.translation(DOMAIN, folder, fallback=True)


def tr(text: str | Say, /, **values: Any) -> str:
    """The text in the user's language, fields filled; English where no translation is kept."""
    if isinstance(text, Say):
        return fill(_catalogue().gettext(text.template) if text.template else "", text.values)
    return fill(_catalogue().gettext(text) if text else "", values)


def trn(one: str, many: str, count: int, /, **values: Any) -> str:
    """The singular or plural text for ``count`` (also filled as ``{count}``)."""
    return fill(_catalogue().ngettext(one, many, count), {"count": count, **values})
