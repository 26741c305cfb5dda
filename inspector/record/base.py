"""What all parts of a record share."""

from __future__ import annotations

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

Key = Annotated[str, Field(min_length=1, max_length=120)]
Line = Annotated[str, Field(max_length=500)]
Words = Annotated[str, Field(max_length=40_000)]
Moment = Annotated[str, Field(max_length=40, description="ISO 8601 with offset; empty when not known")]


class Piece(BaseModel):
    """A frozen piece of a record; unknown keys are errors, so that nothing is dropped unseen."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True, allow_inf_nan=False)
