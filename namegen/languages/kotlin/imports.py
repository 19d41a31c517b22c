"""Imports of a Kotlin file: which name comes from which files.

Any file of a package may define a name, and a package's files lie in its folder, where the
words that all packages of a program begin with may be left out (Kotlin documentation, Coding
conventions, Source code organization). So a folder is told from the file's own.
"""

from __future__ import annotations

from functools import cached_property

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.imports import ImportFinder
from namegen.languages.kotlin.expressions import dotted
from namegen.languages.kotlin.trees import child_of
from namegen.model.facts import Import, Path


class Imported(Struct, frozen=True):
    """One import: ``words`` are what is written before a star, ``local`` what it is called here."""

    words: Path
    local: str
    star: bool


class Imports(ImportFinder[Imported]):
    """The imports of one file, and its package."""

    @cached_property
    def package(self) -> Path:
        """The words of the package that the file belongs to."""
        header = child_of(self.source.root, "package_header")
        return dotted(self.source, child_of(header, "qualified_identifier")) or ()

    def _of_statement(self, statement: Node) -> list[Imported]:
        words = dotted(self.source, child_of(statement, "qualified_identifier"))
        if statement.type != "import" or not words:
            return []
        renamed = child_of(statement, "identifier")
        star = any(child.type == "*" for child in statement.children)
        local = self.source.text(renamed) if renamed is not None else words[-1]
        return [Imported(words, "" if star else local, star)]

    def named(self, word: str) -> list[Import]:
        """Return where a word may come from: its own import, the package, then stars."""
        found: list[Import] = []
        plain = word.removesuffix("()")
        for one in self.all:
            if one.local == plain:
                found += self._places(word, (*one.words[:-1], one.words[-1] + word[len(plain) :]))
        found.append(Import(word, ("*.kt",), (word,), 0))
        for one in self.all:
            if one.star:
                found += self._places(word, (*one.words, word))
        return found

    def aliases(self, word: str) -> set[str]:
        """Return what the imported name is called here, where that is something else."""
        return {
            one.local for one in self.all if one.words[-1] == word and one.local not in {"", word}
        }

    def owners_of(self, word: str) -> set[str]:
        """Return the last words of the objects or packages that a name is imported from."""
        return {
            (one.words if one.star else one.words[:-1])[-1]
            for one in self.all
            if (one.star or one.local == word) and len(one.words) > 1
        }

    def _places(self, word: str, words: Path) -> list[Import]:
        """Return where a fully written name may be defined; its last words may lie in a type."""
        found: list[Import] = []
        for count in range(len(words) - 1, -1, -1):
            package, member = words[:count], words[count:]
            shared = _shared(package, self.package)
            near = (*package[shared:], "*.kt")
            found.append(Import(word, ("/".join(near),), member, len(self.package) - shared))
            if package:
                found.append(Import(word, ("/".join((*package, "*.kt")),), member))
        return found


def _shared(one: Path, other: Path) -> int:
    """Return with how many of the same words both begin."""
    pairs = zip(one, other, strict=False)
    return next((at for at, (a, b) in enumerate(pairs) if a != b), min(len(one), len(other)))
