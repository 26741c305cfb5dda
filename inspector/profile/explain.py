"""What the schema refused, said so that somebody with a text editor can mend it."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches
from enum import Enum
from itertools import islice
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel

from inspector.profile.model import Profile
from inspector.profile.problem import Flaw, Where
from inspector.texts import Say, say

Error = dict[str, Any]
MOST_COMPARED = 400

_WANTED = {
    "string": say("text in quotes"),
    "int": say("a whole number"),
    "float": say("a number"),
    "decimal": say("a number"),
    "bool": say("true or false"),
    "tuple": say("a list in [ ]"),
    "dict": say("a table"),
    "model": say("a table"),
    "enum": say("one of the known words"),
}


def flaws_of(errors: Iterable[Error], data: Any) -> list[Flaw]:
    """One flaw for each error that pydantic reports of this data."""
    return [_flaw(error, data) for error in errors]


def annotation_at(where: Where) -> Any:
    """The type that the schema holds at a path, or None where it holds nothing."""
    kind: Any = Profile
    for step in where:
        kind = _below(_bare(kind), step)
        if kind is None:
            return None
    return _bare(kind)


def label(where: Where, data: Any) -> str:
    """The path in words, by ids where there are some: station "left", item 2."""
    words: list[str] = []
    for step in where:
        data = _child(data, step)
        if isinstance(step, str):
            words.append(step)
            continue
        name = data.get("id") if isinstance(data, dict) else None
        words[-1] += f' "{name[:80]}"' if isinstance(name, str) else f" {step + 1}"
    return ", ".join(words) or "profile"


def shown(value: Any) -> str:
    """The value as it was written, cut short; lists and tables by what they are."""
    if isinstance(value, dict | list):
        return "a table" if isinstance(value, dict) else "a list"
    if isinstance(value, bool):
        return "true" if value else "false"
    try:
        text = f'"{value}"' if isinstance(value, str) else str(value)
    except ValueError:
        return "a very long number"
    return text if len(text) <= 60 else text[:57] + "..."


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word most like this one among the first four hundred, if any is like it."""
    return next(iter(get_close_matches(word[:80], islice(known, MOST_COMPARED), n=1, cutoff=0.6)), None)


def offer(word: str, known: Iterable[str]) -> Say:
    """The remedy for a word that is not known: the nearest one, and all of them."""
    words = list(known)
    near = nearest(word, words)
    listed = ", ".join(words[:40])
    if not words:
        return say("take it out, or write what it names.")
    if near is None:
        return say("use one of: {words}.", words=listed)
    return say('did you mean "{near}"? Known are: {words}.', near=near, words=listed)


def keys_of(model: type[BaseModel]) -> list[str]:
    """The keys of a table as they are written in the file."""
    return [field.alias or name for name, field in model.model_fields.items()]


def _bare(kind: Any) -> Any:
    """The type without Annotated and without None."""
    while get_origin(kind) is Annotated:
        kind = get_args(kind)[0]
    if get_origin(kind) in (Union, UnionType):
        kind = next(arg for arg in get_args(kind) if arg is not type(None))
        return _bare(kind)
    return kind


def _below(kind: Any, step: str | int) -> Any:
    inner = get_args(kind)
    if isinstance(step, int):
        if get_origin(kind) is not tuple:
            return None
        return inner[0] if inner[-1] is Ellipsis or step >= len(inner) else inner[step]
    if get_origin(kind) is dict:
        return inner[1]
    if not (isinstance(kind, type) and issubclass(kind, BaseModel)):
        return None
    named = {field.alias or name: field.annotation for name, field in kind.model_fields.items()}
    return named.get(step)


def _child(data: Any, step: str | int) -> Any:
    try:
        return data[step]
    except (KeyError, IndexError, TypeError):
        return None


def _flaw(error: Error, data: Any) -> Flaw:
    where = _place(error)
    what, mend = _said(error, where, data)
    place = label(where, data)
    return Flaw(where, say("{place}: {what}", place=place, what=what), mend)


def _place(error: Error) -> Where:
    """The path of what was refused; of the key that a table's own check begins by naming."""
    where = tuple(step for step in error["loc"] if step != "[key]")
    if error["type"] != "value_error":
        return where
    first = str(error["ctx"]["error"]).split(" ")[0]
    around = annotation_at(where)
    holds = isinstance(around, type) and issubclass(around, BaseModel) and first in keys_of(around)
    return (*where, first) if holds else where


def _said(error: Error, where: Where, data: Any) -> tuple[Say, Say]:
    kind = error["type"]
    if kind == "missing":
        return (
            say("this is needed and missing."),
            say("add a line {key} = ... here.", key=where[-1]),
        )
    if kind == "extra_forbidden":
        return say("this key is not known."), _known_key(where)
    if kind == "value_error":
        return (
            say("{said}.", said=str(error["ctx"]["error"])),
            say("correct the values so that this holds."),
        )
    if kind in ("enum", "literal_error"):
        return _word(error, where)
    if kind.endswith(("_type", "_parsing", "_from_float")):
        return _type(error, kind)
    return _limit(error, kind)


def _known_key(where: Where) -> Say:
    around = annotation_at(where[:-1])
    known = keys_of(around) if isinstance(around, type) and issubclass(around, BaseModel) else []
    return offer(str(where[-1]), known)


def _word(error: Error, where: Where) -> tuple[Say, Say]:
    kind = annotation_at(where)
    if isinstance(kind, type) and issubclass(kind, Enum):
        known = [str(word.value) for word in kind]
    elif where[:1] == ("outlines",):
        known = ["left", "right", "front", "rear", "top"]
    else:
        known = [str(word) for word in get_args(kind)]
    return (
        say("{value} is not a word of the list.", value=shown(error["input"])),
        offer(str(shown(error["input"])).strip('"'), known),
    )


def _type(error: Error, kind: str) -> tuple[Say, Say]:
    wanted = _WANTED.get(kind.split("_")[0], say("something else"))
    return (
        say("{value} is of the wrong kind.", value=shown(error["input"])),
        say("write {wanted}.", wanted=wanted),
    )


def _limit(error: Error, kind: str) -> tuple[Say, Say]:
    value, context = shown(error["input"]), error.get("ctx", {})
    if kind == "string_pattern_mismatch":
        return say("{value} has the wrong form.", value=value), _form(context["pattern"])
    limits = {
        "greater_than_equal": ("ge", "write {limit} or more."),
        "greater_than": ("gt", "write more than {limit}."),
        "less_than_equal": ("le", "write {limit} or less."),
        "string_too_long": ("max_length", "write at most {limit} letters."),
        "string_too_short": ("min_length", "write at least {limit} letter."),
        "too_short": ("min_length", "write at least {limit} entry."),
        "too_long": ("max_length", "write at most {limit} entries."),
    }
    if kind in limits:
        key, template = limits[kind]
        return (
            say("{value} is outside what is allowed.", value=value),
            say(template, limit=context[key]),
        )
    return (
        say("{value} cannot be used: {said}.", value=value, said=error["msg"]),
        say("write a value of the kind that the schema describes."),
    )


def _form(pattern: str) -> Say:
    if pattern.startswith(r"^\d{4}"):
        return say('write year and month as "1967-08".')
    return say("use small letters, figures, dot, dash and underscore, with no blanks.")
