"""Names with what is taken out of them: ``a.b["c"].values()`` as words of one path.

An entry of a table is a word such as ``['c']``, so that it is followed through classes,
imports and files as ``a.b.c`` would be.
"""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.python.literals import value_of
from namegen.languages.sources import Source, elements
from namegen.model.facts import Path

KEYS, VALUES = "keys()", "values()"
"""Words that stand for what all entries of a table have."""
EACH = "[*]"
"""A word for one element of a list after the other, which a loop takes."""
_OWNER = {"subscript": "value", "attribute": "object"}
_NUMBERS = frozenset({"integer", "unary_operator"})


def chain(source: Source, node: Node | None) -> Path | None:
    """Return the words of ``a.b["c"].values()``, or None where it is anything else."""
    words: list[str] = []
    while node is not None and node.type in {"subscript", "call", "attribute"}:
        word = _last_word(source, node)
        if word is None:
            return None
        words.append(word)
        whole = node.child_by_field_name("function") if node.type == "call" else node
        node = whole and whole.child_by_field_name(_OWNER.get(whole.type, ""))
    if node is None or node.type != "identifier":
        return None
    return (source.text(node), *reversed(words))


def _last_word(source: Source, node: Node) -> str | None:
    if node.type == "attribute":
        return _attribute(source, node)
    if node.type == "subscript":
        keys = node.children_by_field_name("subscript")
        return entry(source, keys[0]) if len(keys) == 1 else None
    function, given = node.child_by_field_name("function"), node.child_by_field_name("arguments")
    if function is None or given is None or elements(given):
        return None
    word = f"{_attribute(source, function)}()"
    return word if word in {KEYS, VALUES} else None


def _attribute(source: Source, node: Node) -> str | None:
    name = node.child_by_field_name("attribute")
    return source.text(name) if name is not None else None


def entry(source: Source, key: Node | None) -> str | None:
    """Return the word for ``["c"]``, if the key is written out."""
    if key is None or key.type in _NUMBERS:
        return None if key is None else f"[{source.text(key)}]"
    parts = key.children if key.type == "string" else []
    if len(parts) < 2 or any(part.type == "interpolation" for part in parts):
        return None
    body = source.data[parts[0].end_byte : parts[-1].start_byte].decode("utf-8", "replace")
    value = value_of(body, source.text(parts[0]))
    return f"[{value!r}]" if value is not None else None
