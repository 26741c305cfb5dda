"""What people said: listed as unverified, and changing nothing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.record.claim import Statement
    from inspector.record.model import Record


@dataclass(frozen=True, slots=True)
class UnlinkedStatement:
    """Something said that no evidence is tied to, with who said it, how and when."""

    id: str
    text: str
    by: str
    medium: str
    at: str
    sentence: Say


def unlinked_statements(record: Record) -> tuple[UnlinkedStatement, ...]:
    """Every statement in the order entered, each as unverified."""
    return tuple(_unlinked(record, statement) for statement in record.statements)


def _unlinked(record: Record, one: Statement) -> UnlinkedStatement:
    who = record.name_of(one.by) if one.by else say("somebody")
    sentence = say("Unverified: “{text}” ({who}, {medium}).", text=one.text.strip(), who=who, medium=say(one.medium))
    return UnlinkedStatement(one.id, one.text, one.by, one.medium, one.at, sentence)
