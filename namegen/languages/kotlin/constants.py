"""Literals of a Kotlin file become references to generated constants, with their import."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from tree_sitter import Node

from namegen.errors import UnusableInput
from namegen.languages.edits import spliced
from namegen.languages.import_lines import Edit, ImportLine, imported
from namegen.languages.kotlin.definitions import Definitions
from namegen.languages.kotlin.grammar import parser
from namegen.languages.kotlin.imports import Imports
from namegen.languages.kotlin.literals import RAW
from namegen.languages.sources import Source, span_of, whole_literal
from namegen.model.facts import ConstantUse, Surroundings, Text
from namegen.model.places import Span

_ABOVE = frozenset({"file_annotation", "package_header", "shebang"})
"""What stands above the imports of a file."""


class _Head(Struct, frozen=True):
    """What stands before the declarations of a file, as it is written."""

    source: Source
    imports: Imports
    nodes: tuple[Node, ...]
    above: int | None

    @classmethod
    def of(cls, source: Source) -> _Head:
        if source.root.has_error:
            raise UnusableInput("the file is not valid Kotlin")
        found = source.root.children
        above = max((one.end_byte for one in found if one.type in _ABOVE), default=None)
        nodes = tuple(one for one in found if one.type == "import")
        return cls(source, Imports(source), nodes, above)

    @property
    def package(self) -> str:
        return ".".join(self.imports.package)


def use_constants(utf8: bytes, uses: Sequence[ConstantUse], _here: Surroundings) -> bytes:
    """Return the text with each literal replaced, and the generated objects imported once."""
    source = Source(utf8, parser())
    head = _Head.of(source)
    edits: list[Edit] = []
    called: dict[tuple[str, str], str] = {}
    for use in uses:
        key = (use.file, use.words[0])
        if key not in called:
            package = _Head.of(Source(use.text, parser())).package
            called[key], added = _called(head, package, use.words[0])
            edits += added
        reference = ".".join([called[key], *use.words[1:]])
        edits.append((_literal(source, use.literal), reference.encode("utf-8")))
    return spliced(utf8, edits)


def _literal(source: Source, text: Text) -> Span:
    """Return the literal with its quotes.

    Raises:
        UnusableInput: it is a part of a text with names in it.
    """
    sort = "multiline_string_literal" if text.opening == RAW else "string_literal"
    span = whole_literal(source.root, text.span, sort)
    size = len(text.opening)
    if (span.start, span.end) != (text.span.start - size, text.span.end + size):
        raise UnusableInput("a name is not one literal by itself")
    return span


def _called(head: _Head, package: str, simple: str) -> tuple[str, list[Edit]]:
    """Return how the object is called in this file, and the edit that imports it, if any."""
    if head.package == package:
        return simple, []
    name = f"{package}.{simple}" if package else simple
    for one in head.imports.all:
        if not one.star and ".".join(one.words) == name:
            return one.local, []
    local = Definitions(head.source).bindings(simple)
    words = [one for one in head.imports.all if one.local == simple]
    stars = [one for one in head.imports.all if one.star and ".".join(one.words) == package]
    if stars and not local and not words:
        return simple, []
    lines = [
        ImportLine(".".join(one.words), span_of(node))
        for one, node in zip(head.imports.all, head.nodes, strict=False)
    ]
    return imported(head.source, name, "", lines, head.above)
