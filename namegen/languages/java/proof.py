"""The proof that an edited Java file is as sound as before and its literals are right."""

from __future__ import annotations

from namegen.languages.java.grammar import parser
from namegen.languages.java.literals import value_of
from namegen.languages.java.reading import JavaReading
from namegen.languages.proofs import TreeProof

objection = TreeProof(
    "Java",
    lambda utf8: JavaReading(utf8, parser(), ()),
    value_of,
    frozenset({"string_literal"}),
).objection
