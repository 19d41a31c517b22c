"""Literals of a Java file become references to generated constants, with their import."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import PurePosixPath

from msgspec import Struct
from tree_sitter import Node

from namegen.errors import UnusableInput
from namegen.languages.edits import spliced
from namegen.languages.import_lines import Edit, ImportLine, imported
from namegen.languages.java.expressions import dotted
from namegen.languages.java.grammar import parser
from namegen.languages.sources import Source, span_of, whole_literal
from namegen.model.facts import ConstantUse, Surroundings

_NAMES = frozenset({"identifier", "scoped_identifier"})


class _Head(Struct, frozen=True):
    """What stands before the types of a file: its package and its imports, as they are written."""

    package: Node | None
    imports: tuple[Node, ...]

    @classmethod
    def of(cls, source: Source) -> _Head:
        found = source.root.children
        if any(node.is_error for node in found):
            raise UnusableInput("the file is not valid Java")
        package = next((node for node in found if node.type == "package_declaration"), None)
        return cls(package, tuple(node for node in found if node.type == "import_declaration"))


def use_constants(utf8: bytes, uses: Sequence[ConstantUse], _here: Surroundings) -> bytes:
    """Return the text with each literal replaced, and the generated classes imported once."""
    source = Source(utf8, parser())
    head = _Head.of(source)
    edits: list[Edit] = []
    classes: dict[str, str] = {}
    for use in uses:
        if use.file not in classes:
            classes[use.file], added = _spoken(source, head, _class_of(use))
            edits += added
        reference = ".".join([classes[use.file], *use.words[1:]])
        literal = whole_literal(source.root, use.literal.span, "string_literal")
        edits.append((literal, reference.encode("utf-8")))
    return spliced(utf8, edits)


def _class_of(use: ConstantUse) -> str:
    """Return the generated class with its package."""
    source = Source(use.text, parser())
    package = _name(source, _Head.of(source).package)
    stem = PurePosixPath(use.file).stem
    return f"{package}.{stem}" if package else stem


def _name(source: Source, declaration: Node | None) -> str:
    """Return the name that a package or import declaration is about."""
    children = declaration.named_children if declaration is not None else ()
    name = next((child for child in children if child.type in _NAMES), None)
    return ".".join(dotted(source, name) or ())


def _spoken(source: Source, head: _Head, name: str) -> tuple[str, list[Edit]]:
    """Return how the class is called in this file, and the edit that imports it, if any."""
    package, _, simple = name.rpartition(".")
    if _name(source, head.package) == package:
        return simple, []
    if not package:
        raise UnusableInput(f"{simple} has no package, so that code in one cannot import it")
    if any(_is_plain(one) and _name(source, one) == name for one in head.imports):
        return simple, []
    lines = [ImportLine(_name(source, one), span_of(one)) for one in head.imports if _is_plain(one)]
    above = head.package.end_byte if head.package is not None else None
    return imported(source, name, ";", lines, above)


def _is_plain(declaration: Node) -> bool:
    return not {"static", "asterisk"} & {child.type for child in declaration.children}
