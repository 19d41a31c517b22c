"""Where an include is added to a C++ file: among the others, in their order."""

from __future__ import annotations

import re
from posixpath import basename, dirname, normpath, relpath, splitext

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.sources import Source
from namegen.model.facts import Surroundings
from namegen.model.places import Span

_LINE = re.compile(rb"[^\r\n]*(?:\r\n|\r|\n|\Z)")
_COMMENT = re.compile(
    rb"(?:\s*(?://[^\r\n]*|/\*(?:[^*]|\*(?!/))*\*/[ \t]*)(?:\r\n|\r|\n))+(?=[ \t]*(?:\r\n|\r|\n))"
)
"""Comments at the head of a file that are about all of it: a blank line follows."""


class _Include(Struct, frozen=True):
    """An include that stands outside of any condition: what it is of, and its line."""

    path: str
    own: bool
    line: Span


def added_include(source: Source, file: str, here: Surroundings) -> tuple[Span, bytes] | None:
    """Return the edit that includes a file, or None where it is included already."""
    top = _top(source)
    included = [_of(source, node) for node in top if node.type == "preproc_include"]
    known = [one for one in included if one is not None]
    folders = [dirname(here.path), *here.roots]
    paths = (f"{folder}/{one.path}" for one in known for folder in folders)
    if any(normpath(path).lstrip("/") == file for path in paths):
        return None
    path = relpath(file, dirname(here.path) or ".")
    end = next((end for end in (b"\r\n", b"\n", b"\r") if end in source.data), b"\n")
    line = f'#include "{path}"'.encode() + end
    at, blank_before, blank_after = _place(source, top, known, path, here)
    if at and source.data[at - 1 : at] not in {b"\r", b"\n"}:
        line = end + line
    blanks = (end if blank_before else b"", end if blank_after else b"")
    return Span(at, at), line.join(blanks)


def _top(source: Source) -> list[Node]:
    """Return what stands outside of conditions, but for the one around a whole header."""
    nodes = source.root.children
    rest = [one for one in nodes if one.type != "comment"]
    if len(rest) == 1 and rest[0].type in {"preproc_ifdef", "preproc_if"}:
        return rest[0].children
    return nodes


def _of(source: Source, node: Node) -> _Include | None:
    path = node.child_by_field_name("path")
    if path is None or path.type not in {"string_literal", "system_lib_string"}:
        return None
    match = _LINE.match(source.data, node.start_byte)
    line = Span(node.start_byte, match.end() if match else node.end_byte)
    return _Include(source.text(path)[1:-1], path.type == "string_literal", line)


def _place(
    source: Source, top: list[Node], known: list[_Include], path: str, here: Surroundings
) -> tuple[int, bool, bool]:
    """Return where the line goes, and whether a blank line is to stand before and behind it."""
    stem = splitext(basename(here.path))[0]
    own = [one for one in known if one.own and splitext(basename(one.path))[0] != stem]
    later = next((one for one in own if one.path > path), None)
    if later is not None:
        return later.line.start, False, False
    last = own[-1] if own else known[-1] if known else None
    if last is not None:
        if b"/*" in source.data[last.line.start : last.line.end]:  # it may go on in the next line
            return last.line.start, False, False
        return last.line.end, not last.own, False
    return _below_the_head(source, top)


def _below_the_head(source: Source, top: list[Node]) -> tuple[int, bool, bool]:
    """Return where the first include of a file goes, with the blank lines around it."""
    at = 0
    for node in top:
        line = _LINE.match(source.data, node.start_byte)
        once = node.type == "preproc_call" and b"once" in (node.text or b"")
        guard = node.type == "preproc_def" and node.child_by_field_name("value") is None
        if line is not None and (once or guard):
            at = line.end()
        elif node.is_named and node.type not in {"comment", "identifier"}:
            break
    comment = _COMMENT.match(source.data) if not at else None
    at = comment.end() if comment is not None else at
    return at, bool(at), source.data[at : at + 1] not in {b"\r", b"\n"}
