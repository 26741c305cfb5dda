"""A profile read from disk, with everything that is wrong with it said at once."""

from __future__ import annotations

import json
import re
import stat
import tomllib
from collections.abc import Iterable
from copy import deepcopy
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from inspector.profile.checks import flaws_in
from inspector.profile.explain import Error, annotation_at, flaws_of
from inspector.profile.lines import Lines
from inspector.profile.model import Profile
from inspector.profile.problem import Flaw, Problem, Where, in_file
from inspector.texts import Say, say

NAME = "profile.toml"
LIMIT = 2 * 1024 * 1024  # bytes; the largest profile seen has a sixth of a megabyte
MOST_TOLD = 500  # problems; nobody mends more before looking again

# The library that reads TOML takes time with the square of the parts of a dotted key.
_LONG_KEY = re.compile(r"(?<![\w\"'.-])(?:[\w\"'-]++[ \t]*+\.[ \t]*+){64}")
DEPTH = 40  # levels of tables and lists; a profile needs a dozen
ROUNDS = 4  # a slip set aside may uncover another
_LINE = re.compile(r"at line (\d+)")


@dataclass(frozen=True, slots=True)
class ProfileRead:
    """What came of reading: the profile if nothing stops its use, and all problems by line."""

    profile: Profile | None
    problems: tuple[Problem, ...]
    text: str
    sha256: str
    folder: Path


class _Refused(Exception):
    """The file cannot be read as text or as TOML at all."""

    def __init__(self, what: Say, mend: Say, line: int | None = None) -> None:
        super().__init__(str(what))
        self.problem = (line, what, mend)


def read_profile(folder_or_file: Path) -> ProfileRead:
    """The profile in a folder, or the file itself; bad input gives problems, never an error.

    ``sha256`` is of the bytes read, in hexadecimal; empty when nothing could be read.
    """
    path = folder_or_file
    text = digest = ""
    try:
        path = _file(folder_or_file)
        raw = _bytes(path)
        digest = sha256(raw).hexdigest()
        text = _text(raw)
        data = _tables(text)
    except _Refused as refused:
        line, what, mend = refused.problem
        problem = Problem(path.name or str(path), line, what, mend)
        return ProfileRead(None, (problem,), text, digest, path.parent)
    profile, flaws = _checked(data, path.parent)
    problems = _placed(flaws, text, path.name)
    if any(problem.stops for problem in problems):
        profile = None
    return ProfileRead(profile, problems, text, digest, path.parent)


def _file(given: Path) -> Path:
    """The profile's file; refuses what is not an ordinary file."""
    try:
        path = given / NAME if given.is_dir() else given
        mode = path.stat().st_mode
    except (OSError, ValueError):
        raise _Refused(
            say("there is no profile here ({path}).", path=str(given)),
            say('name a folder that holds "{name}", or that file.', name=NAME),
        ) from None
    if not stat.S_ISREG(mode):
        raise _Refused(
            say("{path} is not a file.", path=str(path)),
            say('put the profile in a text file named "{name}".', name=NAME),
        )
    return path


def _bytes(path: Path) -> bytes:
    try:
        size = path.stat().st_size
        with path.open("rb") as file:
            raw = file.read(LIMIT + 1) if size <= LIMIT else b""
    except OSError as trouble:
        raise _Refused(
            say("the file cannot be read ({why}).", why=trouble.strerror or str(trouble)),
            say("make the file readable for yourself."),
        ) from None
    if size > LIMIT or len(raw) > LIMIT:
        raise _Refused(
            say("the file has {size} bytes, more than {limit}.", size=size, limit=LIMIT),
            say("keep pictures in files of their own; a profile is text."),
        )
    return raw


def _text(raw: bytes) -> str:
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as trouble:
        line = raw.count(b"\n", 0, trouble.start) + 1
        raise _Refused(
            say("byte {at} is not UTF-8 text.", at=trouble.start),
            say("save the file as UTF-8 in your editor."),
            line,
        ) from None


def _tables(text: str) -> dict[str, Any]:
    deep = _Refused(
        say("the tables or lists are nested too deep."),
        say("write each part as a table of its own, as the sample profiles do."),
    )
    if _LONG_KEY.search(text):
        raise deep
    try:
        data = tomllib.loads(text)
        if _deeper(data, DEPTH):
            raise deep
        json.dumps(data, default=str)
    except RecursionError:
        raise deep from None
    except ValueError as trouble:
        found = _LINE.search(str(trouble))
        raise _Refused(
            say("this is not TOML: {said}.", said=str(trouble)[:200]),
            say("correct the text at this place: a quote, bracket or = sign is often missing."),
            int(found.group(1)) if found else max(1, len(text.splitlines())),
        ) from None
    return data


def _deeper(data: Any, levels: int) -> bool:
    """True when tables and lists lie in each other more than so many levels deep."""
    level = [data]
    for _ in range(levels):
        held = [one for one in level if isinstance(one, dict | list)]
        level = [v for one in held for v in (one.values() if isinstance(one, dict) else one)]
    return any(isinstance(one, dict | list) for one in level)


def _validated(data: dict[str, Any]) -> Profile:
    """Read strictly as JSON, so that "1967" is no number and true is no 1."""
    return Profile.model_validate_json(json.dumps(data, default=str), strict=True)


def _checked(data: dict[str, Any], folder: Path) -> tuple[Profile | None, list[Flaw]]:
    """The profile, or all that is wrong: slips are set aside to see what the rest still hides."""
    flaws: list[Flaw] = []
    places: list[Where] = []
    rest = deepcopy(data)
    for _ in range(ROUNDS):
        try:
            profile = _validated(rest)
        except ValidationError as refused:
            errors = _errors(refused)
            flaws += flaws_of(errors[: MOST_TOLD + 1], data)
            if len(errors) > MOST_TOLD:
                break
            places += [tuple(error["loc"]) for error in errors]
            if not _set_aside(rest, errors):
                break
        else:
            near = {where[:4] for where in places}
            flaws += _first(flaw for flaw in flaws_in(profile, folder) if flaw.where[:4] not in near)
            return (None if places else profile), flaws
    return None, flaws


def _first(flaws: Iterable[Flaw]) -> list[Flaw]:
    """As many of each kind as are told and one more; however many weak ones there are hides none that stops."""
    kept: dict[bool, list[Flaw]] = {True: [], False: []}
    for flaw in flaws:
        kind = kept[flaw.stops]
        if len(kind) <= MOST_TOLD:
            kind.append(flaw)
        elif flaw.stops:
            break
    return [*kept[True], *kept[False]]


def _errors(refused: ValidationError) -> list[Error]:
    """What was refused, without lists called too short only because an entry was refused."""
    errors: list[Error] = [dict(error) for error in refused.errors(include_url=False)]
    around = {e["loc"][:end] for e in errors for end in range(len(e["loc"]))}
    return [e for e in errors if e["type"] != "too_short" or e["loc"] not in around]


def _set_aside(rest: Any, errors: list[Error]) -> bool:
    """True when every refused key was taken out, or had an allowed word put in its place."""
    try:
        for error in errors:
            _replace(rest, error, tuple(error["loc"]))
    except (LookupError, TypeError, ValueError):
        return False
    return True


def _replace(rest: Any, error: Error, where: Where) -> None:
    """Takes the refused key out, or puts any allowed word in its place; an id is never replaced."""
    *outer, key = where
    for step in outer:
        rest = rest[step]
    if error["type"] == "enum" and where[-1] != "[key]":
        rest[key] = next(iter(annotation_at(where))).value
    elif error["type"] != "missing" and key != "id":
        del rest[key]
    else:
        raise LookupError(key)


def _placed(flaws: list[Flaw], text: str, file: str) -> tuple[Problem, ...]:
    """The flaws by line; where there are more than are told, those that stop come first, and the last says so."""
    if not flaws:
        return ()
    lines = Lines(text)
    told = sorted(flaws, key=lambda flaw: not flaw.stops)[:MOST_TOLD]
    found = [in_file(flaw, file, lines.of(flaw.where)) for flaw in told]
    found.sort(key=lambda problem: (problem.line or 0, not problem.stops))
    if len(flaws) > MOST_TOLD:
        more = say("there are more problems than these {count}.", count=MOST_TOLD)
        found.append(
            Problem(file, None, more, say("mend these first, then check again."), any(one.stops for one in found))
        )
    return tuple(found)
