"""C++ as one of the languages."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.errors import UnusableInput
from namegen.languages import Making, Prefilter
from namegen.languages.cpp.constants import use_constants
from namegen.languages.cpp.grammar import parser
from namegen.languages.cpp.literals import spell
from namegen.languages.cpp.marks import initialises, looks_up
from namegen.languages.cpp.proof import objection
from namegen.languages.cpp.reading import CppReading
from namegen.languages.encodings import Decoded, decode_as
from namegen.languages.prefilters import prefilter, rules_for
from namegen.model.facts import ConstantUse, Reading, Respelling, Surroundings, Text
from namegen.model.workspaces import LookupRule


class Cpp:
    """Implements `namegen.languages.Language`."""

    name = "cpp"
    makes: Making = "own class"

    def decode(self, data: bytes) -> Decoded:
        """Return the text of a file: UTF-8, or else Latin-1, which older projects use."""
        try:
            return decode_as(data, "utf-8")
        except UnusableInput:
            return decode_as(data, "latin-1")

    def prefilter(self, rules: Sequence[LookupRule]) -> Prefilter:
        """Return the test that tells, on raw bytes, which files need no reading."""
        mine = rules_for(self.name, rules)
        names = prefilter(mine, looks_up)
        if not any(rule.shape == "new" for rule in mine):
            return names
        return lambda data: names(data) or initialises(data)

    def read(self, utf8: bytes, rules: Sequence[LookupRule]) -> Reading:
        """Return the facts of a file."""
        return CppReading(utf8, parser(), rules_for(self.name, rules))

    def spell(self, value: str, literal: Text) -> str | None:
        """Return the text that means ``value`` between the literal's quotes, or None."""
        return spell(value, literal)

    def use_constants(self, utf8: bytes, uses: Sequence[ConstantUse], here: Surroundings) -> bytes:
        """Return the text with literals replaced by constants, and their imports added."""
        return use_constants(utf8, uses, here)

    def objection(
        self, before: bytes, after: bytes, respellings: Sequence[Respelling]
    ) -> str | None:
        """Return why ``after`` must not be written, or None."""
        return objection(before, after, respellings)
