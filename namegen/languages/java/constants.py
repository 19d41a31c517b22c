"""Literals of a Java file become references to generated constants, with their import."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import PurePosixPath

from namegen.errors import UnusableInput
from namegen.languages.edits import spliced
from namegen.languages.java.grammar import parser
from namegen.languages.sources import whole_literal
from namegen.model.facts import ConstantUse
from namegen.model.places import Span

_PACKAGE = re.compile(rb"^[ \t]*package[ \t]+([\w.]+)[ \t]*;[^\n]*\n?", re.MULTILINE)
_IMPORT = re.compile(rb"^import[ \t]+([\w.]+)[ \t]*;[^\n]*\n", re.MULTILINE)


def use_constants(utf8: bytes, uses: Sequence[ConstantUse]) -> bytes:
    """Return the text with each literal replaced, and the generated classes imported once."""
    root = parser().parse(utf8).root_node
    edits: list[tuple[Span, bytes]] = []
    classes: dict[str, str] = {}
    for use in uses:
        name = _class_of(use)
        if name not in classes:
            classes[name], added = _spoken(utf8, name)
            edits += added
        reference = ".".join([classes[name], *use.words[1:]])
        literal = whole_literal(root, use.literal.span, "string_literal")
        edits.append((literal, reference.encode("utf-8")))
    return spliced(utf8, edits)


def _class_of(use: ConstantUse) -> str:
    """Return the generated class with its package."""
    package = _PACKAGE.search(use.text)
    stem = PurePosixPath(use.file).stem
    return f"{package[1].decode()}.{stem}" if package else stem


def _spoken(utf8: bytes, name: str) -> tuple[str, list[tuple[Span, bytes]]]:
    """Return how the class is called in this file, and the edit that imports it, if any."""
    package, _, simple = name.rpartition(".")
    own = _PACKAGE.search(utf8)
    if (own[1].decode() if own else "") == package:
        return simple, []
    if not package:
        raise UnusableInput(f"{simple} has no package, so that code in one cannot import it")
    imports = list(_IMPORT.finditer(utf8))
    if any(found[1].decode() == name for found in imports):
        return simple, []
    if re.search(rb"\b" + simple.encode() + rb"\b", utf8):
        first = name.partition(".")[0]
        if re.search(rb"\b" + first.encode() + rb"\b(?!\s*\.)", utf8):  # a variable hides packages
            raise UnusableInput(f"{simple} and {first} already mean something else here")
        return name, []
    end = b"\r\n" if b"\r\n" in utf8 else b"\n"
    statement = f"import {name};".encode() + end
    later = [found for found in imports if found[1].decode() > name]
    if imports:
        at = later[0].start() if later else imports[-1].end()
        return simple, [(Span(at, at), statement)]
    at = own.end() if own else 0
    return simple, [(Span(at, at), (end if own else b"") + statement + (b"" if own else end))]
