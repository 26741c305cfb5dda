"""The schema of a profile as JSON Schema, for editors that check while one writes."""

from __future__ import annotations

import json
from pathlib import Path

from inspector.profile.model import Profile

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema_text() -> str:
    """The JSON Schema (draft 2020-12) of profile.toml, indented, ending in a line end."""
    schema = {"$schema": DIALECT, **Profile.model_json_schema(by_alias=True)}
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"


def write_schema(path: Path) -> None:
    """Writes the schema to path; raises OSError where it cannot be written."""
    path.write_text(schema_text(), encoding="utf-8", newline="\n")
