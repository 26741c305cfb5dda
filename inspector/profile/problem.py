"""One thing that is wrong with a profile: where, what, and how to mend it."""

from __future__ import annotations

from dataclasses import dataclass, field

from inspector.texts import Say, say, tr

Where = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Problem:
    """Something wrong in a file; with ``stops`` the profile cannot be used until it is mended."""

    file: str
    line: int | None
    what: Say
    mend: Say
    stops: bool = True

    @property
    def sentence(self) -> Say:
        """File, line, what is wrong and the remedy in one sentence to show."""
        values = {"file": self.file, "what": self.what, "mend": self.mend}
        if self.line is None:
            return say("{file}: {what} Mend: {mend}", **values)
        return say("{file} line {line}: {what} Mend: {mend}", line=self.line, **values)

    def __str__(self) -> str:
        return tr(self.sentence)


@dataclass(frozen=True, slots=True)
class Flaw:
    """A problem whose place is still a path into the profile, not yet a line of the file."""

    where: Where
    what: Say
    mend: Say
    stops: bool = field(default=True)


def in_file(flaw: Flaw, file: str, line: int | None) -> Problem:
    """The flaw as a problem of that file and line."""
    return Problem(file, line, flaw.what, flaw.mend, flaw.stops)
