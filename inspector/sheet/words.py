"""Small turns of phrase that every part of a sheet shares."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from inspector.texts import MONTHS, tr

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.record.model import Record

GRADE_WORDS = (
    (3, "factory list, manual"),
    (2, "club register, specialist, observed"),
    (1, "press, general"),
    (0, "memory, or none"),
)
FOOT = (
    "Says what was seen on this day. Ownership, theft, registration and roadworthiness are decided by the"
    " authorities and licensed people of the place."
)


def moment(stamp: str) -> str:
    """An ISO 8601 time as people write it, ``17 May 2025, 11:20``; anything else as it stands."""
    try:
        at = datetime.fromisoformat(stamp)
    except ValueError:
        return stamp
    day = f"{at.day} {tr(MONTHS[at.month - 1])} {at.year}"
    return day if len(stamp) <= len("2025-05-17") else f"{day}, {at.hour:02d}:{at.minute:02d}"


def listed(parts: Iterable[str], joiner: str = ", ") -> str:
    """The parts that say something, joined."""
    return joiner.join(part for part in (p.strip() for p in parts) if part)


def sentence(text: str) -> str:
    """The text with a capital first and a full stop last."""
    text = text.strip()
    if not text:
        return ""
    return text[0].upper() + text[1:] + ("" if text[-1] in ".!?…:" else ".")


def year_of(record: Record) -> str:
    """The claimed model year in words."""
    year = record.claim.model_year
    return tr("{year} model", year=year) if year else tr("no model year claimed")


def said_by(record: Record, by: str, at: str) -> str:
    """Who says so and when."""
    return listed((record.name_of(by) if by else tr("not noted by whom"), moment(at)))
