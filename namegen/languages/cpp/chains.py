"""Names of C++ that lead through calls and elements: ``load().bow``, ``lamps[0].name``."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp.names import dotted
from namegen.languages.sources import Source, elements
from namegen.model.facts import Path

ELEMENT = "[]"
"""The word that stands for any element; ``[0]`` is the first one."""
LED_TO = "[*]"
"""The word for what an iterator or a pointer leads to."""
_STARTS = frozenset({"begin", "cbegin", "crbegin", "rbegin"})
_LONGEST = 30
"""Calls and elements of one name that are followed."""
_CALLED = "()"


def is_element(word: str) -> bool:
    """Whether a word of a path stands for an element of what is before it."""
    return word.startswith("[")


def chain(source: Source, node: Node | None) -> Path | None:
    """Return the words of a name with ``f()`` for a call and ``[0]`` or ``[]`` for an element.

    None where it is anything else. Arguments say nothing about what a call gives an object of.
    """
    after: Path = ()
    for _ in range(_LONGEST):
        words = dotted(source, node)
        if words == ("this",) and after and is_element(after[0]):
            return None  # an object's own elements bear no name
        if words is not None or node is None:
            return (*words, *after) if words is not None else None
        if node.type == "call_expression":
            node, word = _called(source, node)
            words = dotted(source, node)
            if words is not None and word == _CALLED:
                return (*words[:-1], f"{words[-1]}()", *after)
        else:
            node, word = _step(source, node, after)
        after = (word, *after) if word else after
    return None


def _step(source: Source, node: Node, after: Path) -> tuple[Node | None, str]:
    """Return what a part of a name is of, and the word for it; no word for brackets around it."""
    if node.type == "parenthesized_expression":
        return next(iter(elements(node)), None), ""
    if node.type == "pointer_expression" and node.children[0].type == "*":
        is_object = bool(after) and not is_element(after[0])  # `(*config).bow`
        return node.child_by_field_name("argument"), "" if is_object else LED_TO
    if node.type == "field_expression":
        return node.child_by_field_name("argument"), source.text(node.children[-1])
    if node.type == "subscript_expression":
        index = _index(source, elements(node.child_by_field_name("indices")))
        return node.child_by_field_name("argument"), index
    return None, ""


def _called(source: Source, call: Node) -> tuple[Node | None, str]:
    """Return what a method is called on, with the word for it; of a function itself and a mark."""
    function, given = call.child_by_field_name("function"), call.child_by_field_name("arguments")
    if function is None or function.type != "field_expression":
        return function, _CALLED
    arguments = elements(given)
    method, whole = source.text(function.children[-1]), function.child_by_field_name("argument")
    if method == "front" and not arguments:
        return whole, "[0]"
    if (method == "at" and len(arguments) == 1) or (method == "back" and not arguments):
        return whole, _index(source, arguments)
    return whole, f"{method}()"


def _index(source: Source, given: list[Node]) -> str:
    """Return the word for an element: by its number where that is written out."""
    text = source.text(given[0]) if len(given) == 1 else ""
    return f"[{text}]" if text.isdecimal() and (text == "0" or text[0] != "0") else ELEMENT


def begun(source: Source, value: Node) -> Node | None:
    """Return the list whose beginning an expression is: ``names.begin()``, ``begin(names)``."""
    function, given = (value.child_by_field_name(one) for one in ("function", "arguments"))
    if value.type != "call_expression" or function is None or given is None:
        return None
    arguments = elements(given)
    if function.type == "field_expression":
        is_start = source.text(function.children[-1]) in _STARTS and not arguments
        return function.child_by_field_name("argument") if is_start else None
    words = dotted(source, function)
    is_start = words is not None and words[-1] in _STARTS and len(arguments) == 1
    return arguments[0] if is_start else None
