"""Literals of a C++ file become references to generated constants, with their include."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.errors import UnusableInput
from namegen.languages.cpp.grammar import parser
from namegen.languages.cpp.including import added_include
from namegen.languages.cpp.names import dotted
from namegen.languages.edits import spliced
from namegen.languages.sources import Source
from namegen.model.facts import ConstantUse, Surroundings
from namegen.model.places import Span

_LITERALS = frozenset({"string_literal", "raw_string_literal"})
_PARTS = frozenset({"concatenated_string", "user_defined_literal"})
_FILLED = frozenset({"init_declarator", "field_declaration"})
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
    if use.literal.opening not in {'"', 'R"('} and not use.literal.opening.startswith('R"'):
        raise UnusableInput("its letters are of another type than those of the constant")
    if above.type == "template_argument_list" or _is_in_macro(source, around[place:]):
        raise UnusableInput("a template or a macro needs the text itself")
    if any(_is_array_of_letters(source, one) for one in around[place:]):
        raise UnusableInput(
            "an array of letters takes no constant; `constexpr const char*` instead of `char` "
            "and `[]` does"
        )
    return Span(literal.start_byte, literal.end_byte)


def _is_in_macro(source: Source, around: Sequence[Node]) -> bool:
    """Whether a literal is an argument of what looks like a macro: ``LOG("bow")``."""
    if around[1].type != "argument_list":
        return False
    words = dotted(source, around[2].child_by_field_name("function"))
    return words is not None and len(words) == 1 and (words[0] in _KEEPING or words[0].isupper())


def _is_array_of_letters(source: Source, node: Node) -> bool:
    """Whether a declaration fills an array of letters, or several of them."""
    if node.type not in _FILLED:
        return False
    statement = node.parent if node.type == "init_declarator" else node
    kind = statement.child_by_field_name("type") if statement is not None else None
    letters = kind is not None and kind.type == "primitive_type" and b"char" in (kind.text or b"")
    found, parts = node.child_by_field_name("declarator"), set()
    while found is not None:
        parts.add(found.type)
        found = found.child_by_field_name("declarator")
    return letters and "array_declarator" in parts and "pointer_declarator" not in parts


def _reference(source: Source, use: ConstantUse, literal: Span) -> str:
    """Return the constant's name, from the outermost namespace where its first word is taken."""
    words = "::".join(use.words)
    taken = {"identifier", "field_identifier", "type_identifier"}
    if not any(stack[-1].type in taken for stack in source.stacks([use.words[0]])):
        return words
    before = source.data[max(0, literal.start - 1) : literal.start]
    return f" ::{words}" if before in {b":", b"<"} else f"::{words}"
