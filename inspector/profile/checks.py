"""What the schema alone cannot see: whether the parts of a profile fit together."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

from inspector.profile.check_files import files_in_folder
from inspector.profile.check_ids import cycles, duplicate_ids, unknown_ids
from inspector.profile.check_numbers import number_rules, relations
from inspector.profile.check_years import alike, outside, uncited, uncovered_years
from inspector.profile.model import Profile
from inspector.profile.problem import Flaw

Check = Callable[[Profile, Path], Iterator[Flaw]]

CHECKS: tuple[Check, ...] = (
    duplicate_ids,
    unknown_ids,
    cycles,
    number_rules,
    relations,
    outside,
    uncovered_years,
    alike,
    uncited,
    files_in_folder,
)


def flaws_in(profile: Profile, folder: Path) -> Iterator[Flaw]:
    """Everything in a valid profile that does not fit together; folder holds its pictures."""
    for check in CHECKS:
        yield from check(profile, folder)
