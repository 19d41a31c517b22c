"""Kotlin as one of the languages."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.languages import Making, Prefilter
from namegen.languages.encodings import Decoded, decode_as
from namegen.languages.kotlin.constants import use_constants
from namegen.languages.kotlin.grammar import parser
from namegen.languages.kotlin.literals import spell
from namegen.languages.kotlin.marks import has_implicit, looks_up
from namegen.languages.kotlin.proof import objection
from namegen.languages.kotlin.reading import KotlinReading
from namegen.languages.prefilters import prefilter, rules_for, without_receivers
from namegen.model.facts import ConstantUse, Reading, Respelling, Surroundings, Text
from namegen.model.workspaces import LookupRule


class Kotlin:
    """Implements `namegen.languages.Language`."""

    name = "kotlin"
    makes: Making = "own class"

    def decode(self, data: bytes) -> Decoded:
        """Return the text of a file: the compiler takes UTF-8 and nothing else."""
        return decode_as(data, "utf-8")

    def prefilter(self, rules: Sequence[LookupRule]) -> Prefilter:
        """Return the test that tells, on raw bytes, which files need no reading."""
        mine = rules_for(self.name, rules)
        plain = prefilter(mine, looks_up)
        on_any = prefilter(without_receivers(mine), looks_up)
        return lambda data: plain(data) or (has_implicit(data) and on_any(data))

    def read(self, utf8: bytes, rules: Sequence[LookupRule]) -> Reading:
        """Return the facts of a file."""
        return KotlinReading(utf8, parser(), rules_for(self.name, rules))

    def spell(self, value: str, literal: Text) -> str | None:
        """Return the text that means ``value`` between the literal's quotes, or None."""
        return spell(value, literal)

    def use_constants(self, utf8: bytes, uses: Sequence[ConstantUse], here: Surroundings) -> bytes:
        """Return the text with literals replaced by constants, and their imports added."""
        return use_constants(utf8, uses)

    def objection(
        self, before: bytes, after: bytes, respellings: Sequence[Respelling]
    ) -> str | None:
        """Return why ``after`` must not be written, or None."""
        return objection(before, after, respellings)
