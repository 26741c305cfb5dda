"""What a sheet says of its version: what differs from the one before, and what its seal shows and does not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.sheet.blocks import ListBlock, Phrase, Row
from inspector.sheet.keys import grouped
from inspector.sheet.words import moment
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.record.money import Version
    from inspector.texts import Say


class SealBlock(ListBlock):
    """Whose key seals the sheet, by which clock, and what is inside the file."""


class DifferencesBlock(ListBlock):
    """What differs from the version before."""


@dataclass(frozen=True, slots=True)
class Issue:
    """What a sheet is told of its version: the one before and what differs; the key, where it is to be sealed."""

    before: Version | None = None
    differences: tuple[Say, ...] = ()
    fingerprint: str = ""


def differences_block(issue: Issue) -> DifferencesBlock | None:
    """Every difference from the version before, numbered; None where there is none before."""
    if issue.before is None:
        return None
    number, when = issue.before.number, moment(issue.before.at)
    rows = tuple(Row("", Phrase("", tr(line))) for line in issue.differences)
    note = tr("Version {number} was sealed on {when}. What stands on this sheet otherwise than there:", number=number,
              when=when)  # fmt: skip
    none = tr("Nothing on this sheet differs from version {number}, sealed on {when}.", number=number, when=when)
    return DifferencesBlock(tr("What differs"), rows, numbered=True, note=note if rows else none)


def seal_block(issue: Issue, made_at: str) -> SealBlock | None:
    """What the seal is; None on a sheet that is not sealed."""
    if not issue.fingerprint:
        return None
    rows = (
        (tr("Key"), grouped(issue.fingerprint)),
        (tr("Compare"), tr("Two people who want to know that they hold the same key compare these figures.")),
        (tr("Time"), tr("{when}. It is this computer’s clock, not witnessed.", when=moment(made_at))),
        (tr("Inside"), tr(
            "The record of this inspection as data (inspection.json), without money and without names of files and"
            " cameras.",
        )),
        (tr("Shows"), tr(
            "Whether anything in this file was changed since it was sealed. It does not show who signed, nor that what"
            " is written is so.",
        )),
    )  # fmt: skip
    return SealBlock(tr("Seal"), tuple(Row(label, Phrase("", said)) for label, said in rows))
