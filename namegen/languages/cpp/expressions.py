"""Expressions of C++ as text: literals, names, pieces put together."""

from __future__ import annotations

import re

from tree_sitter import Node

from namegen.languages.cpp.chains import LED_TO, chain, is_element
from namegen.languages.cpp.library import CASTS, SAME_VALUE
from namegen.languages.cpp.literals import closing, value_of
from namegen.languages.cpp.names import dotted, type_arguments
from namegen.languages.cpp.openings import std_words, tries
from namegen.languages.cpp.scopes import Scope
from namegen.languages.cpp.types import is_list, keeper, kept
from namegen.languages.expressions import RUN_TIME, ExpressionReader, Reader
from namegen.languages.sources import Source, elements, named_child, span_of
from namegen.model.facts import Expression, Join, Path, Ref, Text, Unknown, Wrapped
from namegen.model.places import Span

_SAME_TEXT = frozenset({"c_str", "data"})
_TEXT_SUFFIXES = frozenset({"s", "sv"})
_MACRO = re.compile(
    rb"[ \t]+(?!(?:and|or|xor|bitand|bitor|not_eq)\b|(?:u8|[uUL])?R?[\"'])([A-Za-z_]\w*)"
)
_WHY = {
    "null": "it is null",
    "number_literal": "it is a number, not text",
    "char_literal": "it is one letter, not text",
    "lambda_expression": "it is a function",
    "primitive_type": "it is a type, not text",
}


def _text(source: Source, node: Node) -> Expression:
    whole = source.data[node.start_byte : node.end_byte]
    before = whole.find(b"(") if node.type == "raw_string_literal" else whole.find(b'"')
    opening = whole[: before + 1].decode("utf-8", "replace")
    ending = closing(opening)
    end = len(whole) - len(ending or "")
    if ending is None or not whole.endswith(ending.encode()) or end <= before:
        return Unknown("its quotes are not closed", span_of(node))
    span = Span(node.start_byte + before + 1, node.start_byte + end)
    value = value_of(source.data[span.start : span.end].decode("utf-8", "replace"), opening)
    if value is None:
        return Unknown("it holds an escape that is not followed", span)
    if "\0" in value:
        return Unknown(r"it holds the letter `\0`, at which a text may end", span)
    return Text(value, span, opening)


def _string(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return a literal, with the macro behind it, which the parser was not shown."""
    text = _text(source, node)
    macro = _MACRO.match(source.data, node.end_byte)
    if macro is None:
        return text
    span = Span(macro.start(1), macro.end(1))
    behind = Ref(tries(source, scope, (macro[1].decode("utf-8", "replace"),)), span)
    return Join((text, behind), Span(node.start_byte, span.end))


def _side_by_side(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return ``"bow" SIDE "Thruster"`` as one join."""
    parts = tuple(expression(source, scope, part, depth) for part in elements(node))
    return Join(parts, span_of(node))


def _suffixed(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return ``"bow"sv``; what other suffixes make of a text is not known."""
    literal, suffix = named_child(node, 0), named_child(node, 1)
    if suffix is None or source.text(suffix) not in _TEXT_SUFFIXES:
        return Unknown(RUN_TIME, span_of(node))
    return expression(source, scope, literal, depth)


def _opened(node: Node) -> Node:
    while node.type == "parenthesized_expression":
        inner = next(iter(elements(node)), None)
        if inner is None:
            break
        node = inner
    return node


def _name(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    words = chain(source, node)
    if words is None:
        return Unknown(RUN_TIME, span_of(node))
    return Ref(tries(source, scope, words), span_of(node))


def _element(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return ``names[0]``, ``*it``, or each of ``names[i]``, one of which it will be."""
    words = chain(source, node)
    if words is None or not is_element(words[-1]):
        taken = node.type == "subscript_expression"
        return Unknown("it is taken out of a table" if taken else RUN_TIME, span_of(node))
    return Ref(tries(source, scope, words), span_of(node))


def _call(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return the text that a call only passes on, or the value of a function that gives one."""
    called, given = node.child_by_field_name("function"), node.child_by_field_name("arguments")
    words = dotted(source, called)
    arguments = elements(given)
    if called is not None and called.type == "field_expression" and not arguments:
        field = called.child_by_field_name("field")
        if field is not None and source.text(field) in _SAME_TEXT:
            return _text_of(source, scope, called, depth)
    through = chain(source, node) if words is None or not arguments else None
    through = through or _element_of(source, node)
    if through is not None:
        return Ref(tries(source, scope, through), span_of(node))
    if words is None:
        return Unknown(RUN_TIME, span_of(node))
    is_method = called is not None and called.type == "field_expression"
    if len(arguments) == 1 and not is_method:
        return _made(source, scope, called, expression(source, scope, arguments[0], depth))
    return Unknown(f"it is made at run time by `{words[-1]}()`", span_of(node))


def _text_of(source: Source, scope: Scope, called: Node, depth: int) -> Expression:
    """Return the text whose letters ``name.c_str()`` gives, or ``it->c_str()``."""
    whole = called.child_by_field_name("argument")
    words = chain(source, whole) if any(one.type == "->" for one in called.children) else None
    if words is None or words == ("this",):
        return expression(source, scope, whole, depth)
    return Ref(tries(source, scope, (*words, LED_TO)), span_of(called))


def _element_of(source: Source, node: Node) -> Path | None:
    """Return the words of ``names.at(0)``."""
    words = chain(source, node)
    return words if words is not None and is_element(words[-1]) else None


def _made(source: Source, scope: Scope, called: Node | None, value: Expression) -> Expression:
    """Return what a type or a function makes of one value, for a type that may keep it."""
    words = dotted(source, called)
    if words is None:
        return Unknown(RUN_TIME, value.span)
    if words[-1] in CASTS:
        given = next(iter(elements(type_arguments(called) or called)), None) if called else None
        return kept(source, scope, given, value)
    known = std_words(source, words)
    if known is not None and len(known) == 1 and known[0] in SAME_VALUE:
        return value
    keeping = keeper(source, scope, words, value.span)
    return value if keeping is None else Wrapped(keeping, value, value.span)


def _cast(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return the text in ``(const char*) kBow``."""
    value = expression(source, scope, node.child_by_field_name("value"), depth)
    return kept(source, scope, node.child_by_field_name("type"), value)


def _literal_of_type(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return ``std::string_view{"x"}``, or a list of several such as ``std::array{"a", "b"}``."""
    kind, listed = (node.child_by_field_name(field) for field in ("type", "value"))
    given = elements(listed)
    if is_list(source, kind):
        return kept(source, scope, kind, expression(source, scope, listed, depth))
    if len(given) != 1:
        return Unknown(RUN_TIME, span_of(node))
    return _made(source, scope, kind, expression(source, scope, given[0], depth))


def _argument(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return an argument that was read as a parameter: ``kBow`` in ``Sensor bow(boat, kBow)``."""
    if node.child_by_field_name("declarator") is not None:
        return Unknown(RUN_TIME, span_of(node))
    return expression(source, scope, node.child_by_field_name("type"), depth)


_READERS: dict[str, Reader[Scope]] = {
    "string_literal": _string,
    "raw_string_literal": _string,
    "concatenated_string": _side_by_side,
    "user_defined_literal": _suffixed,
    "identifier": _name,
    "field_identifier": _name,
    "type_identifier": _name,
    "qualified_identifier": _name,
    "field_expression": _name,
    "pointer_expression": _element,
    "subscript_expression": _element,
    "call_expression": _call,
    "cast_expression": _cast,
    "compound_literal_expression": _literal_of_type,
    "parameter_declaration": _argument,
}

expression = ExpressionReader(
    _READERS,
    _WHY,
    _opened,
    sums=frozenset({"binary_expression"}),
    lists=frozenset({"initializer_list"}),
    choices=frozenset({"conditional_expression"}),
    assignments=frozenset({"assignment_expression"}),
)
"""Returns a value as text, without following any name."""
