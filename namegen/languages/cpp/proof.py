"""The proof that an edited C++ file is as sound as before and its literals are right."""

from __future__ import annotations

from namegen.languages.cpp.grammar import parser
from namegen.languages.cpp.literals import closing, value_of
from namegen.languages.cpp.macros import root_around
from namegen.languages.cpp.reading import CppReading
from namegen.languages.proofs import TreeProof

objection = TreeProof(
    "C++",
    lambda text: CppReading(text, parser(), ()),
    value_of,
    frozenset({"string_literal", "raw_string_literal"}),
    closing,
    root_around,
).objection
