"""What all shapes share: a group of fields, and what messages and schemas ask of it."""

from __future__ import annotations

from typing import ClassVar

from pydantic import BaseModel, ConfigDict, model_validator


class Shape(BaseModel):
    """A group of fields. Unknown ones are refused."""

    model_config = ConfigDict(extra="forbid", defer_build=True)

    what: ClassVar[str] = ""
    """What the group describes, as messages call it."""
    needed: ClassVar[tuple[str, ...]] = ()
    """Fields that must be there."""
    in_parts: ClassVar[bool] = False
    """Whether several files may give the fields together, so that one file may lack some."""
    exactly_one: ClassVar[tuple[str, ...]] = ()
    """Fields of which exactly one must be there."""

    @model_validator(mode="before")
    @classmethod
    def _cleared(cls, value: object) -> object:
        return {} if value is None else value
