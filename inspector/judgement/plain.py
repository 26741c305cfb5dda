"""A judgement's values as what JSON can hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from decimal import Decimal
from enum import Enum
from typing import Any

from inspector.record.finding import Finding
from inspector.texts import Say


def plain(value: Any) -> Any:
    """The value as dictionaries, lists, numbers, texts and None: sentences in English, exact points as text."""
    if isinstance(value, Say | Decimal):
        return str(value)
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Finding):
        return value.key
    if isinstance(value, Mapping):
        return {str(key): plain(one) for key, one in value.items()}
    if isinstance(value, tuple | list):
        return [plain(one) for one in value]
    if is_dataclass(value):
        return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
    return value
