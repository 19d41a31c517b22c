"""The proof that an edited Python file is still valid and its literals mean what they should.

LibCST ends the process at about 1,500 nested brackets and runs out of stack at
about 500 joined strings (measured), so deep files are turned away before it.
"""

from __future__ import annotations

import ast
import warnings
from collections.abc import Sequence

from namegen.languages.edits import moved, respelt
from namegen.languages.python.grammar import parser
from namegen.languages.sources import Source
from namegen.model.facts import Respelling

DEEPEST = 250
"""Nodes within one another, and strings side by side, up to which LibCST is asked."""


def objection(before: bytes, after: bytes, respellings: Sequence[Respelling]) -> str | None:
    """Return why ``after`` must not be written, or None when it is proved."""
    if after != respelt(before, respellings):
        return "something outside the names would change"
    for one in respellings:
        if _evaluated(one.literal.opening, one.spelling) != one.value:
            return f"the literal would not mean {one.value!r}"
    if _too_deep(after):
        return "the file is nested too deeply to prove the edit"
    reason = _refused(after)
    if reason is not None:
        return reason
    return _misplaced(after, respellings)


def _evaluated(opening: str, body: str) -> object:
    """Return what Python makes of a literal."""
    text = opening + body + opening.lstrip("rRuUfFbB")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            tree = ast.parse(text, mode="eval").body
        except (SyntaxError, ValueError):
            return None
    if isinstance(tree, ast.JoinedStr) and len(tree.values) == 1:
        tree = tree.values[0]
    if isinstance(tree, ast.JoinedStr) and not tree.values:
        return ""
    return tree.value if isinstance(tree, ast.Constant) else None


def _refused(after: bytes) -> str | None:
    """Return LibCST's reason for not taking the file."""
    import libcst  # heavy, and only files to be rewritten need it

    try:
        libcst.parse_module(after.decode("utf-8"))
    except libcst.ParserSyntaxError as error:
        return f"the edited file would not be valid Python ({error.message})"
    except (RecursionError, ValueError) as error:
        return f"the edit cannot be proved ({type(error).__name__})"
    return None


def _misplaced(after: bytes, respellings: Sequence[Respelling]) -> str | None:
    """Return a reason if a changed literal is no longer one literal between its quotes."""
    root = Source(after, parser()).root
    for _, span in moved(respellings):
        node = root.descendant_for_byte_range(span.start, span.end)
        while node is not None and node.type != "string":
            node = node.parent
        if node is None:
            return "the name would no longer be a literal"
        first, last = node.children[0], node.children[-1]
        if last.type != "string_end" or not (
            first.end_byte <= span.start and span.end <= last.start_byte
        ):
            return "the name would no longer be one literal"
    return None


def _too_deep(utf8: bytes) -> bool:
    """Whether LibCST might run out of stack on the file."""
    cursor = Source(utf8, parser()).root.walk()
    depth = 0
    while True:
        node = cursor.node
        if depth > DEEPEST:
            return True
        if node is not None and node.type == "concatenated_string" and node.child_count > DEEPEST:
            return True
        if cursor.goto_first_child():
            depth += 1
            continue
        while not cursor.goto_next_sibling():
            if not cursor.goto_parent():
                return False
            depth -= 1
