"""Literals of a C++ file become references to generated constants, with their include."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tree_sitter import Node

from namegen.errors import UnusableInput
from namegen.languages.cpp.grammar import parser
from namegen.languages.cpp.including import added_include
from namegen.languages.cpp.letters import fills_letters
from namegen.languages.cpp.macros import called_macros
from namegen.languages.cpp.names import dotted
from namegen.languages.edits import spliced
from namegen.languages.sources import Source, Stack
from namegen.model.facts import ConstantUse, Surroundings
from namegen.model.places import Span

_LITERALS = frozenset({"string_literal", "raw_string_literal"})
_PARTS = frozenset({"concatenated_string", "user_defined_literal"})
_DEFINES = frozenset({"preproc_def", "preproc_function_def"})
_TAKEN = frozenset({"field_identifier", "identifier", "type_identifier"})
_SPACES = frozenset(
    {"namespace_alias_definition", "namespace_definition", "nested_namespace_specifier"}
)
"""What gives a name to a namespace; elsewhere such a name only stands for one."""
_KEEPING = frozenset({"F", "PSTR"})
"""Macros of small boards that take the text itself."""


def use_constants(utf8: bytes, uses: Sequence[ConstantUse], here: Surroundings) -> bytes:
    """Return the text with each literal replaced, and the generated headers included once.

    Raises:
        UnusableInput: a literal cannot be a constant where it stands.
    """
    source = Source(utf8, parser())
    edits: list[tuple[Span, bytes]] = []
    for use in uses:
        literal = _literal(source, use)
        edits.append((literal, _reference(source, use, literal).encode()))
    for file in dict.fromkeys(use.file for use in uses):
        added = added_include(source, file, here)
        edits += [added] if added is not None else []
    return spliced(utf8, edits)


def _literal(source: Source, use: ConstantUse) -> Span:
    """Return the whole literal with its quotes.

    Raises:
        UnusableInput: what stands there needs the text itself.
    """
    inside = use.literal.span
    node = source.root.descendant_for_byte_range(inside.start, inside.end)
    around = [node] if node is not None else []
    while around and around[-1].parent is not None:
        around.append(around[-1].parent)
    place = next((at for at, one in enumerate(around) if one.type in _LITERALS), None)
    if place is None or any(one.type.startswith("preproc_def") for one in around):
        raise UnusableInput("a macro needs the text itself")
    literal, above = around[place], around[place + 1]
    macro_behind = source.data[literal.end_byte :].lstrip(b" \t")[:1]
    if above.type in _PARTS or macro_behind.isalpha() or macro_behind == b"_":
        raise UnusableInput("a name is not one literal by itself")
    if use.literal.opening != '"' and not use.literal.opening.startswith('R"'):
        raise UnusableInput("its letters are of another type than those of the constant")
    if above.type == "template_argument_list" or _is_in_macro(source, around[place:]):
        raise UnusableInput("a template or a macro needs the text itself")
    if fills_letters(source, around[place:]):
        raise UnusableInput(
            "an array of letters takes no constant; `constexpr const char*` instead of `char` "
            "and `[]` does"
        )
    return Span(literal.start_byte, literal.end_byte)


def _is_in_macro(source: Source, around: Sequence[Node]) -> bool:
    """Whether a macro may need the text: one of the file, or what looks like one: ``LOG("bow")``.

    What it makes of a text it may make of no constant: one side by side with another text.
    """
    calls = [one for one in around if one.type == "call_expression"]
    called = (dotted(source, one.child_by_field_name("function")) for one in calls)
    if any(words and words[-1] in called_macros(source) for words in called):
        return True
    if around[1].type != "argument_list":
        return False
    words = dotted(source, around[2].child_by_field_name("function"))
    return words is not None and len(words) == 1 and (words[0] in _KEEPING or words[0].isupper())


def _reference(source: Source, use: ConstantUse, literal: Span) -> str:
    """Return the constant's name, from the outermost namespace where its first word is taken.

    Raises:
        UnusableInput: a macro of the file has one of the words.
    """
    words = "::".join(use.words)
    if any(one[-2].type in _DEFINES for one in _named(source, use.words)):
        raise UnusableInput(f"a macro of the file has a word of the constant's name, {words}")
    first = _named(source, use.words[:1])
    if not any(one[-1].type in _TAKEN or one[-2].type in _SPACES for one in first):
        return words
    before = source.data[max(0, literal.start - 1) : literal.start]
    return f" ::{words}" if before in {b":", b"<"} else f"::{words}"


def _named(source: Source, words: Sequence[str]) -> Iterator[Stack]:
    return (stack for stack in source.stacks(words) if len(stack) > 1)
