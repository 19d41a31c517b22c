"""Tables and lists of Python that are written out, and what is taken out of them."""

from __future__ import annotations

from collections.abc import Callable

from tree_sitter import Node

from namegen.languages.python.chains import EACH, KEYS, VALUES, entry
from namegen.languages.python.expressions import TAKEN, expression
from namegen.languages.python.scopes import Scope
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Each, Expression, Path, Several, Unknown

_MOST_LOOPS = 20
"""Loops within one another that are followed."""
LISTS = frozenset({"list", "tuple", "expression_list"})
TABLES = LISTS | {"dictionary"}

_PLAIN = frozenset({"concatenated_string", "false", "float", "integer", "none", "string", "true"})


def is_plain(value: Node) -> bool:
    """Whether a value is a text or a number that is written out."""
    return value.type in _PLAIN


def flat(table: Node) -> bool:
    """Whether a value is plain, or holds nothing but what is: nothing in it can be changed."""
    if table.type not in TABLES | {"set"}:
        return is_plain(table)
    rows = (one.child_by_field_name("value") or one for one in elements(table))
    return all(map(is_plain, rows))


Below = Callable[[Scope, Node, Path], Expression]
"""Returns what the words of a chain take out of a value that is no table."""


def taken(source: Source, scope: Scope, table: Node, words: Path, below: Below) -> Expression:
    """Return what the words of a chain take out of a table, one after the other."""
    if words.count(EACH) > _MOST_LOOPS:
        return Unknown(TAKEN, span_of(table))
    node = table
    for place, word in enumerate(words):
        rest = words[place + 1 :]
        if node.type not in TABLES:
            return below(scope, node, words[place:])
        if word == EACH or (word == VALUES and rest[:1] == (EACH,)):
            return _each(source, scope, node, words[place:], below)
        found = _element(node, word) if node.type in LISTS else _row(source, scope, node, word)
        if not isinstance(found, Node):
            return found
        node = found
    return expression(source, scope, node)


def _each(source: Source, scope: Scope, table: Node, words: Path, below: Below) -> Expression:
    """Return what is taken out of each element of a list, or of each value of a table."""
    word, *rest = words
    rows = elements(table)
    if word == VALUES:
        rest, parts = rest[1:], [row.child_by_field_name("value") for row in rows]
    else:
        parts = list(rows) if table.type in LISTS else [None]
    if any(part is None or "splat" in part.type for part in parts):
        return Unknown(TAKEN, span_of(table))
    options = (
        taken(source, scope, part, tuple(rest), below)
        if part.type in TABLES and rest
        else below(scope, part, tuple(rest))
        for part in parts
        if part is not None
    )
    return Each(Several(tuple(options), span_of(table), listed=True), span_of(table))


def _row(source: Source, scope: Scope, table: Node, word: str) -> Node | Expression:
    """Return the value of an entry, or all keys or all values."""
    rows, span = elements(table), span_of(table)
    if any(row.type != "pair" for row in rows):
        return Unknown(TAKEN, span)
    if word == KEYS:
        return expression(source, scope, table)
    if word == VALUES:
        values = (expression(source, scope, row.child_by_field_name("value")) for row in rows)
        return Several(tuple(values), span, listed=True)
    # Of two rows with one key the last counts, and one whose key is not known may be that.
    found: Node | None = None
    is_sure = word.startswith("[")
    for row in rows:
        key = entry(source, row.child_by_field_name("key"))
        if key == word:
            found, is_sure = row.child_by_field_name("value"), True
        elif key is None:
            found, is_sure = None, False
    return found or Unknown(f"the table has no `{word[1:-1]}`" if is_sure else TAKEN, span)


def _element(values: Node, word: str) -> Node | Expression:
    """Return the element of a list at a place, which may be counted from its end."""
    place, parts = word[1:-1], elements(values)
    splat = any("splat" in part.type for part in parts)
    if splat or not word.startswith("[") or not place.removeprefix("-").isdecimal():
        return Unknown(TAKEN, span_of(values))
    if not -len(parts) <= int(place) < len(parts):
        return Unknown(f"the list has no element {place}", span_of(values))
    return parts[int(place)]
