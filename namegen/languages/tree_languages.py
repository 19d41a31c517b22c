"""A language whose facts come from a tree: what it is made of, put together."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from msgspec import Struct

from namegen.languages import Making, Prefilter
from namegen.languages.encodings import Decoded
from namegen.languages.prefilters import rules_for
from namegen.languages.readings import TreeReading
from namegen.languages.sources import TreeParser
from namegen.model.facts import ConstantUse, Reading, Respelling, Surroundings, Text
from namegen.model.workspaces import LookupRule


class TreeLanguage(Struct, frozen=True, kw_only=True):
    """Implements `namegen.languages.Language` by parts, each of which says what it must do."""

    name: str
    makes: Making
    decode: Callable[[bytes], Decoded]
    glance: Callable[[Sequence[LookupRule]], Prefilter]
    """Returns the test on raw bytes for rules that hold in this language."""
    parser: Callable[[], TreeParser]
    reading: Callable[[bytes, TreeParser, Sequence[LookupRule]], TreeReading[Any, Any]]
    spell: Callable[[str, Text], str | None]
    use_constants: Callable[[bytes, Sequence[ConstantUse], Surroundings], bytes]
    objection: Callable[[bytes, bytes, Sequence[Respelling]], str | None]

    def prefilter(self, rules: Sequence[LookupRule]) -> Prefilter:
        """Return the test that tells, on raw bytes, which files need no reading."""
        return self.glance(rules_for(self.name, rules))

    def read(self, utf8: bytes, rules: Sequence[LookupRule]) -> Reading:
        """Return the facts of a file."""
        return self.reading(utf8, self.parser(), rules_for(self.name, rules))
