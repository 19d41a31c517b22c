"""Macros of C++: what stands behind ``#define`` is plain text to the parser, so it is parsed anew.

A tree of its own with the offsets of the file: what lies before is blanked out, and a
function is put around the text in place of the ``#define`` itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.cpp.grammar import parser, readable
from namegen.languages.sources import Source, elements

_BEFORE, _AFTER = b"v f(){", b"\n;}"


def body_of(source: Source, define: Node) -> Source | None:
    """Return what a macro stands for, as the body of a function at the offsets of the file."""
    value = define.child_by_field_name("value")
    if value is None or value.start_byte < len(_BEFORE):
        return None
    blank = b" " * (value.start_byte - len(_BEFORE))
    text = source.data[value.start_byte : value.end_byte]
    whole = blank + _BEFORE + text + _AFTER
    return Source(whole, parser(), shown=readable(whole))


def macro_value(source: Source, define: Node) -> Node | None:
    """Return the one expression that a macro stands for, or None where it is anything else."""
    body = body_of(source, define)
    if body is None or body.root.has_error:
        return None
    function = next(iter(elements(body.root)), None)
    block = function.child_by_field_name("body") if function is not None else None
    statements = elements(block) if block is not None else []
    if len(statements) != 1 or statements[0].type != "expression_statement":
        return None
    return next(iter(elements(statements[0])), None)


def function_macros(source: Source, words: list[str]) -> Iterator[tuple[Node, Source]]:
    """Yield the macros with arguments in whose text one of the words may stand."""
    if b"#" not in source.data:
        return
    pending = [source.root]
    while pending:
        node = pending.pop()
        if node.type == "preproc_function_def":
            value = node.child_by_field_name("value")
            text = source.text(value) if value is not None else ""
            body = body_of(source, node) if any(word in text for word in words) else None
            if body is not None:
                yield node, body
        elif node.type in {"translation_unit", "preproc_if", "preproc_ifdef", "preproc_else"} | {
            "preproc_elif",
            "namespace_definition",
            "declaration_list",
            "class_specifier",
            "field_declaration_list",
        }:
            pending += node.named_children
