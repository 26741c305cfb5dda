"""Why an entry cannot hold, in one sentence with what was entered and how to mend it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from inspector.record.base import Piece
from inspector.texts import Say, say

END = say("Nothing was changed.")


class EditRefused(ValueError):
    """The edit cannot hold; ``sentence`` says why in words for the user."""

    def __init__(self, sentence: Say) -> None:
        super().__init__(str(sentence))
        self.sentence = sentence


def held(kind: type[Piece], values: Mapping[str, Any]) -> dict[str, Any]:
    """The values as they are kept. Raises EditRefused with one clear sentence where they cannot hold."""
    try:
        return kind.model_validate(values).model_dump(mode="json")
    except ValidationError as trouble:
        raise EditRefused(why_not(trouble)) from trouble


def why_not(trouble: ValidationError) -> Say:
    """The first of what cannot hold, in one sentence with what was entered and how to mend it."""
    return _sentence(dict(trouble.errors()[0]))


def _sentence(error: dict[str, Any]) -> Say:
    where = " ".join(str(part) for part in error["loc"] if isinstance(part, str)).replace("_", " ") or "It"
    given, limits = error.get("input"), error.get("ctx", {})
    kind = error["type"]
    if kind == "greater_than":
        return _said("{where} cannot be {given}: enter more than {least}.", where, given, least=limits.get("gt"))
    if kind == "greater_than_equal":
        return _said("{where} cannot be {given}: enter at least {least}.", where, given, least=limits.get("ge"))
    if kind in {"less_than_equal", "less_than"}:
        return _said("{where} cannot be {given}: enter at most {most}.", where, given, most=limits.get("le"))
    if kind.startswith(("decimal", "int", "float", "finite")):
        return _said('{where}: "{given}" is not a number.', where, given)
    if kind == "string_too_long":
        return _said("{where} is too long: write at most {most} letters.", where, given, most=limits.get("max_length"))
    if kind == "missing":
        return _said("{where} is missing.", where, given)
    if kind == "value_error":
        return _said("{why}.", where, given, why=str(limits.get("error", error["msg"])))
    return _said('{where}: "{given}" cannot be kept: {why}.', where, given, why=str(error["msg"]))


def _said(template: str, where: str, given: Any, **more: Any) -> Say:
    text = say(template, where=where.capitalize(), given=str(given)[:60], **more)
    return say("{what} {end}", what=text, end=END)
