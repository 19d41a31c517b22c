"""Python as one of the languages."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.languages import Making, Prefilter
from namegen.languages.encodings import Decoded
from namegen.languages.prefilters import prefilter, rules_for
from namegen.languages.python.constants import use_constants
from namegen.languages.python.encoding import decode
from namegen.languages.python.grammar import parser
from namegen.languages.python.literals import spell
from namegen.languages.python.marks import looks_up
from namegen.languages.python.proof import objection
from namegen.languages.python.reading import PythonReading
from namegen.model.facts import ConstantUse, Reading, Respelling, Surroundings, Text
from namegen.model.workspaces import LookupRule


class Python:
    """Implements `namegen.languages.Language`."""

    name = "python"
    makes: Making = "class"

    def decode(self, data: bytes) -> Decoded:
        """Return the text of a file, by PEP 263."""
        return decode(data)

    def prefilter(self, rules: Sequence[LookupRule]) -> Prefilter:
        """Return the test that tells, on raw bytes, which files need no reading."""
        return prefilter(rules_for(self.name, rules), looks_up)

    def read(self, utf8: bytes, rules: Sequence[LookupRule]) -> Reading:
        """Return the facts of a file."""
        return PythonReading(utf8, parser(), rules_for(self.name, rules))

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
