"""Expressions of Kotlin as text: literals, templates, names, pieces put together."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME, ExpressionReader, Reader
from namegen.languages.kotlin.scopes import tries
from namegen.languages.kotlin.templates import character, template
from namegen.languages.kotlin.trees import argument_value, arguments_of, called_of, statements
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, elements, named_child, span_of
from namegen.model.facts import Expression, Path, Ref, Several, Unknown

LISTS = frozenset(
    {
        "arrayListOf",
        "arrayOf",
        "hashSetOf",
        "linkedSetOf",
        "listOf",
        "listOfNotNull",
        "mutableListOf",
        "mutableSetOf",
        "sequenceOf",
        "setOf",
        "sortedSetOf",
    }
)
"""Functions of Kotlin's library that give what they are given, one after another."""
_WHY = {
    "index_expression": "it is taken out of a table",
    "number_literal": "it is a number, not text",
    "float_literal": "it is a number, not text",
    "lambda_literal": "it is a function",
    "anonymous_function": "it is a function",
    "callable_reference": "it is a function",
}
_NAMES = frozenset({"identifier", "this_expression"})


def dotted(source: Source, node: Node | None) -> Path | None:
    """Return the words of ``a.b.c`` or ``this.b``, or None where it is anything else."""
    words: list[str] = []
    while node is not None and node.type == "navigation_expression":
        first, last = named_child(node, 0), named_child(node, node.named_child_count - 1)
        if last is None or last.type != "identifier" or node.children[1].type == "::":
            return None
        words.append(source.text(last))
        node = first
    if node is not None and node.type == "qualified_identifier":
        return tuple(source.text(one) for one in elements(node))
    if node is None or node.type not in _NAMES:
        return None
    return (source.text(node), *reversed(words))


def _string(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return a literal; what stands in ``${...}`` is read like any value."""
    return template(source, scope, node, lambda inner: expression(source, scope, inner, depth))


def opened(node: Node) -> Node:
    """Return a node without brackets, casts and the signs that stand for no other text."""
    while True:
        inner = next(iter(elements(node)), None)
        if inner is None or not _is_open(node):
            return node
        node = inner


def _is_open(node: Node) -> bool:
    if node.type == "unary_expression":
        operator = node.child_by_field_name("operator")
        return operator is not None and operator.type == "!!"
    return node.type in {"parenthesized_expression", "as_expression", "spread_expression"}


def _binary(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return ``a + b + c`` as one join, ``a ?: b`` as one of both."""
    operator = node.child_by_field_name("operator")
    if operator is not None and operator.type == "?:":
        sides = (node.child_by_field_name(name) for name in ("left", "right"))
        return _one_of(source, scope, node, [side for side in sides if side is not None], depth)
    return expression.sum(source, scope, node, depth)


def _one_of(
    source: Source, scope: Scope, node: Node, options: list[Node], depth: int
) -> Expression:
    """Return what a choice gives; a way that leaves it (``throw``, ``return``) gives nothing."""
    left = {"throw_expression", "return_expression", "labeled_expression"}
    known = [one for one in options if one.type not in left]
    return Several(tuple(expression(source, scope, one, depth) for one in known), span_of(node))


def _name(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    if node.text in {b"null", b"true", b"false"}:
        return Unknown(f"it is {source.text(node)}", span_of(node))
    words = dotted(source, node)
    if words is None or words == ("this",):
        return Unknown(RUN_TIME, span_of(node))
    return Ref(tries(scope, words), span_of(node))


def _choice(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return what ``if`` and ``when`` give, if each way is one expression."""
    ways = [_last(one) for one in _ways(node)]
    if not ways or None in ways:
        return Unknown(RUN_TIME, span_of(node))
    return _one_of(source, scope, node, [one for one in ways if one is not None], depth)


def _ways(node: Node) -> list[Node]:
    if node.type == "when_expression":
        entries = [one for one in elements(node) if one.type == "when_entry"]
        return [elements(one)[-1] for one in entries if elements(one)]
    condition = node.child_by_field_name("condition")
    found = [one for one in elements(node) if condition is None or one.id != condition.id]
    return found if len(found) == 2 else []


def _last(way: Node) -> Node | None:
    """Return the value of a way: what a block says last, if nothing goes before it."""
    if way.type != "block":
        return way
    inner = statements(way)
    return inner[0] if len(inner) == 1 else None


def _call(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return a written-out list, or the value of a function that only returns one."""
    callee, given = called_of(node), arguments_of(node)
    of = dotted(source, callee)
    if of is None or given is None:
        return Unknown(RUN_TIME, span_of(node))
    called = of[-1]
    if called in LISTS:
        options = (expression(source, scope, argument_value(one), depth) for one in elements(given))
        return Several(tuple(options), span_of(node), listed=True)
    if elements(given):
        return Unknown(f"it is made at run time by `{called}()`", span_of(node))
    return Ref(tries(scope, (*of[:-1], f"{called}()")), span_of(node))


_READERS: dict[str, Reader[Scope]] = {
    "string_literal": _string,
    "multiline_string_literal": _string,
    "character_literal": character,
    "binary_expression": _binary,
    "identifier": _name,
    "navigation_expression": _name,
    "this_expression": _name,
    "qualified_identifier": _name,
    "if_expression": _choice,
    "when_expression": _choice,
    "call_expression": _call,
}

expression = ExpressionReader(_READERS, _WHY, opened, lists=frozenset({"collection_literal"}))
"""Returns a value as text, without following any name."""
