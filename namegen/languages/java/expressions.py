"""Expressions of Java as text: literals, names, pieces put together."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME, ExpressionReader, Reader
from namegen.languages.java.literals import value_of
from namegen.languages.java.scopes import tries
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Expression, Path, Ref, Text, Unknown
from namegen.model.places import Span

_LISTS = {("List", "of"), ("Set", "of"), ("Arrays", "asList"), ("Stream", "of")}
_WHY = {
    "array_access": "it is taken out of a table",
    "null_literal": "it is null",
    "decimal_integer_literal": "it is a number, not text",
    "lambda_expression": "it is a function",
    "method_reference": "it is a function",
    "class_literal": "it is a class, not text",
}


def dotted(source: Source, node: Node | None) -> Path | None:
    """Return the words of ``a.b.c`` or ``this.b``, or None where it is anything else."""
    words: list[str] = []
    while node is not None and node.type in {"field_access", "scoped_identifier"}:
        last = node.child_by_field_name("field") or node.child_by_field_name("name")
        words.append(source.text(last))
        node = node.child_by_field_name("object") or node.child_by_field_name("scope")
    if node is None or node.type not in {"identifier", "this", "type_identifier"}:
        return None
    return (source.text(node), *reversed(words))


def _string(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    whole = source.data[node.start_byte : node.end_byte]
    quote = b'"""' if whole.startswith(b'"""') and len(whole) >= 6 else whole[:1]
    span = Span(node.start_byte + len(quote), node.end_byte - len(quote))
    if not whole.endswith(quote) or span.end < span.start:
        return Unknown("its quotes are not closed", span_of(node))
    opening = quote.decode("ascii")
    value = value_of(source.data[span.start : span.end].decode("utf-8", "replace"), opening)
    if value is None:
        return Unknown("it holds an escape that is not followed", span)
    return Text(value, span, opening)


def _opened(node: Node) -> Node:
    while node.type in {"parenthesized_expression", "cast_expression"}:
        inner = node.child_by_field_name("value") or next(iter(elements(node)), None)
        if inner is None:
            break
        node = inner
    return node


def _name(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    words = dotted(source, node)
    if words is None:
        return Unknown(RUN_TIME, span_of(node))
    return Ref(tries(scope, words), span_of(node))


def _array(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    value = node.child_by_field_name("value")
    if value is None:
        return Unknown(RUN_TIME, span_of(node))
    return expression.sequence(source, scope, value, depth)


def _call(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return a written-out list, or the value of a method that only returns one."""
    name, arguments = node.child_by_field_name("name"), node.child_by_field_name("arguments")
    receiver = node.child_by_field_name("object")
    if name is None or arguments is None:
        return Unknown(RUN_TIME, span_of(node))
    called = source.text(name)
    of = dotted(source, receiver) if receiver is not None else ()
    if of and (of[-1], called) in _LISTS:
        return expression.sequence(source, scope, arguments, depth)
    if called == "stream" and of == ("Arrays",) and arguments.named_child_count == 1:
        return expression(source, scope, arguments.named_children[0], depth)
    if called == "stream" and receiver is not None and not elements(arguments):
        return expression(source, scope, receiver, depth)
    if of is None or elements(arguments):
        return Unknown(f"it is made at run time by `{called}()`", span_of(node))
    return Ref(tries(scope, (*of, f"{called}()")), span_of(node))


_READERS: dict[str, Reader[Scope]] = {
    "string_literal": _string,
    "character_literal": _string,
    "identifier": _name,
    "field_access": _name,
    "scoped_identifier": _name,
    "method_invocation": _call,
    "array_creation_expression": _array,
}

expression = ExpressionReader(
    _READERS,
    _WHY,
    _opened,
    sums=frozenset({"binary_expression"}),
    lists=frozenset({"array_initializer", "element_value_array_initializer"}),
    choices=frozenset({"ternary_expression"}),
    assignments=frozenset({"assignment_expression"}),
)
"""Returns a value as text, without following any name."""
