"""What is said of a file that was checked: in sentences, and as data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from inspector.texts import Say, say, tr

Kind = Literal["profile", "record", "sheet", "bag", "unknown"]
AS_IT_SHOULD = say("As it should be.")


@dataclass(frozen=True, slots=True)
class Answer:
    """What is not as it should be, a sentence each, what else is to be told, and all that was found as data.

    ``first`` is the whole in one sentence, where all is well. Who asked knows which file it is about.
    """

    problems: tuple[Say, ...] = ()
    notes: tuple[Say, ...] = ()
    facts: Mapping[str, Any] = field(default_factory=dict)
    first: Say = AS_IT_SHOULD
    kind: Kind = "unknown"

    @property
    def well(self) -> bool:
        """Whether it is as it should be."""
        return not self.problems

    def lines(self) -> tuple[Say, ...]:
        """Every sentence, the one that tells the whole first."""
        return (*self.problems, *self.notes) if self.problems else (self.first, *self.notes)

    def plain(self) -> dict[str, Any]:
        """The whole answer as data, its sentences in the user's language."""
        told = {"kind": self.kind, "well": self.well, "problems": self.problems, "notes": self.notes, **self.facts}
        return {name: _plain(value) for name, value in told.items()}


def _plain(value: Any) -> Any:
    if isinstance(value, Say):
        return tr(value)
    if isinstance(value, Mapping):
        return {name: _plain(one) for name, one in value.items()}
    return [_plain(one) for one in value] if isinstance(value, list | tuple) else value
