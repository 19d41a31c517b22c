"""Imports of a Java file: which name comes from which file."""

from __future__ import annotations

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.imports import ImportFinder
from namegen.languages.java.expressions import dotted
from namegen.languages.sources import Source, named_child
from namegen.model.facts import Import, Path


class Imported(Struct, frozen=True):
    """One import declaration: ``words`` are what is written before a star."""

    words: Path
    static: bool
    star: bool


class Imports(ImportFinder[Imported]):
    """The imports of one file, and its package."""

    def _of_statement(self, statement: Node) -> list[Imported]:
        if statement.type != "import_declaration":
            return []
        return _of_declaration(self.source, statement)

    def named(self, word: str) -> list[Import]:
        """Return where a word may come from: its own import, the package, then stars."""
        found: list[Import] = []
        for one in self.all:
            if not one.star and one.words[-1:] == (word,):
                found += _places(word, one.words, one.static)
        found.append(Import(word, (f"{word}.java",), (word,), 0))
        for one in self.all:
            if one.star:
                found += _places(word, (*one.words, word), one.static)
        return found

    def types_of(self, word: str) -> set[str]:
        """Return the last words of the types from which a member is imported statically."""
        return {
            (one.words if one.star else one.words[:-1])[-1]
            for one in self.all
            if one.static and (one.star or one.words[-1] == word) and len(one.words) > 1
        }


def _of_declaration(source: Source, node: Node) -> list[Imported]:
    words = dotted(source, named_child(node, 0))
    if words is None:
        return []
    kinds = {child.type for child in node.children}
    return [Imported(words, "static" in kinds, "asterisk" in kinds)]


def _places(word: str, words: Path, static: bool) -> list[Import]:
    """Return where a fully written name may be declared; any of its words may be the outer type."""
    last = len(words) - (1 if static else 0)
    return [
        Import(word, ("/".join(words[:count]) + ".java",), words[count - 1 :])
        for count in range(last, 0, -1)
    ]
