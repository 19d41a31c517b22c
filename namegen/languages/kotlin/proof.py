"""The proof that an edited Kotlin file is as sound as before and its literals are right."""

from __future__ import annotations

from namegen.languages.kotlin.grammar import parser
from namegen.languages.kotlin.literals import value_of
from namegen.languages.kotlin.reading import KotlinReading
from namegen.languages.proofs import TreeProof

objection = TreeProof(
    "Kotlin",
    lambda utf8: KotlinReading(utf8, parser(), ()),
    value_of,
    frozenset({"string_literal", "multiline_string_literal"}),
).objection
