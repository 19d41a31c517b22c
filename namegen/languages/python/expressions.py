"""Expressions of Python as text: literals, names, pieces put together."""

from __future__ import annotations

from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME, ExpressionReader, Reader
from namegen.languages.python.chains import KEYS, VALUES, chain
from namegen.languages.python.functions import CALLED
from namegen.languages.python.literals import value_of
from namegen.languages.python.scopes import Scope, tries
from namegen.languages.sources import Source, elements, named_child, span_of
from namegen.model.facts import (
    Expression,
    Join,
    Path,
    Ref,
    Several,
    Text,
    Unknown,
    Wrapped,
    Wrapper,
)
from namegen.model.places import Span

_SEQUENCES = frozenset({"list", "tuple", "set", "expression_list"})
TAKEN = "it is taken out of a table"
_WHY = {
    "lambda": "it is a function",
    "integer": "it is a number, not text",
    "float": "it is a number, not text",
    "none": "it is None",
    "true": "it is True, not text",
    "false": "it is False, not text",
    "list_splat": "the arguments are unpacked at run time",
    "dictionary_splat": "the arguments are unpacked at run time",
}


def dotted(source: Source, node: Node) -> Path | None:
    """Return the words of ``a.b.c``, or None where it is anything else."""
    words: list[str] = []
    current: Node | None = node
    while current is not None and current.type == "attribute":
        words.append(_field_text(source, current, "attribute"))
        current = current.child_by_field_name("object")
    if current is None or current.type != "identifier":
        return None
    return (source.text(current), *reversed(words))


def is_wrapper(source: Source, node: Node) -> bool:
    """Whether a value is ``NewType("N", str)``: called with a text it gives that text."""
    if node.type != "call":
        return False
    callee = dotted(source, node.child_by_field_name("function") or node)
    arguments = node.child_by_field_name("arguments")
    if callee is None or callee[-1] != "NewType" or arguments is None:
        return False
    given = elements(arguments)
    return len(given) == 2 and source.text(given[1]) == "str"


def _opened(node: Node) -> Node:
    while node.type == "parenthesized_expression" and node.named_child_count:
        inner = elements(node)
        if not inner:
            break
        node = inner[0]
    return node


def _field_text(source: Source, node: Node, name: str) -> str:
    child = node.child_by_field_name(name)
    return source.text(child) if child is not None else ""


def _string(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    children = node.children
    start, end = children[0], children[-1]
    opening = source.text(start)
    if len(children) < 2 or end.type != "string_end":
        return Unknown("its quotes are not closed", span_of(node))
    middle = children[1:-1]
    if all(child.type == "string_content" for child in middle):
        return _text(source, Span(start.end_byte, end.start_byte), opening)
    parts: list[Expression] = []
    at = start.end_byte
    for child in middle:
        if child.type != "interpolation":
            continue
        if child.start_byte > at:
            parts.append(_text(source, Span(at, child.start_byte), opening))
        parts.append(_interpolated(source, scope, child, depth))
        at = child.end_byte
    if end.start_byte > at:
        parts.append(_text(source, Span(at, end.start_byte), opening))
    return Join(tuple(parts), span_of(node))


def _text(source: Source, span: Span, opening: str) -> Expression:
    body = source.data[span.start : span.end].decode("utf-8", "replace")
    value = value_of(body, opening)
    if value is None:
        return Unknown("it is not plain text (bytes, or an escape that is not whole)", span)
    return Text(value, span, opening)


def _interpolated(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return the text of one ``{...}``; a conversion or a format makes it unknown."""
    inner = named_child(node, 0)
    if inner is None or [child.type for child in node.children] != ["{", inner.type, "}"]:
        return Unknown("it is formatted at run time", span_of(node))
    return expression(source, scope, inner, depth)


def _concatenated(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    parts = tuple(expression(source, scope, part, depth) for part in elements(node))
    return Join(parts, span_of(node))


def _binary(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return ``a + b + c`` as one join."""
    operator = node.child_by_field_name("operator")
    if operator is not None and operator.type == "%":
        return Unknown("it is filled in with `%` at run time", span_of(node))
    return expression.sum(source, scope, node, depth)


def _name(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    words = chain(source, node)
    if words is None:
        return Unknown(TAKEN if node.type == "subscript" else RUN_TIME, span_of(node))
    return Ref(tries(source, scope, words), span_of(node))


def _conditional(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    parts = elements(node)
    if len(parts) != 3:
        return Unknown(RUN_TIME, span_of(node))
    branches = (expression(source, scope, part, depth) for part in (parts[0], parts[2]))
    return Several(tuple(branches), span_of(node))


def _keys(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return the keys of a table, which a loop over it takes."""
    options: list[Expression] = []
    for row in elements(node):
        key = row.child_by_field_name("key")
        if key is None:
            options.append(Unknown("the table is unpacked at run time", span_of(row)))
            continue
        value = expression(source, scope, key, depth)
        options.append(replace(value, is_key=True) if isinstance(value, Text) else value)
    return Several(tuple(options), span_of(node), listed=True)


def _call(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    function, arguments = (
        node.child_by_field_name("function"),
        node.child_by_field_name("arguments"),
    )
    if is_wrapper(source, node):
        return Wrapper(span_of(node))
    words = dotted(source, function) if function is not None else None
    given = elements(arguments) if arguments is not None else []
    last = _field_text(source, function, "attribute") if function is not None else ""
    part = chain(source, node) if f"{last}()" in {KEYS, VALUES} else None
    if part is not None:
        return Ref(tries(source, scope, part), span_of(node))
    if words is not None and arguments is not None and not elements(arguments):
        return Ref(tries(source, scope, (*words[:-1], words[-1] + CALLED)), span_of(node))
    called = f"`{words[-1] if words else last}()`" if words or last else "a call"
    if (
        words is None
        or len(given) != 1
        or given[0].type in {"keyword_argument", "list_splat", "dictionary_splat"}
        or (arguments is not None and arguments.type != "argument_list")
    ):
        return Unknown(f"it is made at run time by {called}", span_of(node))
    value = expression(source, scope, given[0], depth)
    by = Ref(tries(source, scope, words), span_of(function or node))
    return Wrapped(by, value, span_of(node))


def _walrus(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    return expression(source, scope, node.child_by_field_name("value"), depth)


_READERS: dict[str, Reader[Scope]] = {
    "string": _string,
    "concatenated_string": _concatenated,
    "binary_operator": _binary,
    "identifier": _name,
    "attribute": _name,
    "conditional_expression": _conditional,
    "subscript": _name,
    "dictionary": _keys,
    "call": _call,
    "named_expression": _walrus,
}

expression = ExpressionReader(_READERS, _WHY, _opened, lists=_SEQUENCES)
"""Returns a value as text, without following any name."""
