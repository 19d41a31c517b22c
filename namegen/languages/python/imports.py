"""Imports of a Python file: which local name comes from which module."""

from __future__ import annotations

import re
from functools import cached_property

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.imports import ImportFinder
from namegen.languages.python.functions import CALLED
from namegen.languages.sources import Source, occurrences
from namegen.model.facts import Import, Path
from namegen.model.places import Span

_STAR = re.compile(rb"(?:[ \t]|\\\r?\n)*\*")


class Imported(Struct, frozen=True):
    """One name of an import statement. ``name`` is None for ``import a.b``, ``*`` for a star."""

    local: str
    module: Path
    name: str | None
    up: int | None


class Imports(ImportFinder[Imported]):
    """The imports of one file."""

    def _may_import(self, word: Span) -> bool:
        data = self.source.data
        line = max(data.rfind(end, 0, word.start) for end in (b"\n", b"\r")) + 1
        before = data[line : word.start].strip()
        return not before or before.endswith((b";", b":")) or b"from" in before

    def _of_statement(self, statement: Node) -> list[Imported]:
        return _of_statement(self.source, statement)

    def named(self, word: str) -> list[Import]:
        """Return where a word may come from: by its own import, else by a star, the last first."""
        plain = word.removesuffix(CALLED)
        own = [one for one in self._beside(plain) if one.local == plain]
        found = [imported for one in own for imported in _imports(one, word)]
        if not word.startswith("_"):
            found += [imported for one in reversed(self._stars) for imported in _imports(one, word)]
        return found

    def modules_of(self, word: str) -> set[str]:
        """Return the last words of the modules from which a name is imported as itself."""
        return {one.module[-1] for one in self._beside(word) if one.name == word and one.module}

    def _beside(self, word: str) -> list[Imported]:
        """Return the imports in those pieces of the file that have a word: only there is it named.

        Most files are asked for one or two words, and need not be parsed for other imports.
        """
        having = {self.source.piece(place.start) for place in occurrences(self.source.data, word)}
        return [one for piece in sorted(having) for one in self._in_piece(piece)]

    def _in_piece(self, piece: int) -> list[Imported]:
        if piece not in self._by_piece:
            within = (one for one in self._keywords if self.source.piece(one.start) == piece)
            self._by_piece[piece] = self._at(within)
        return self._by_piece[piece]

    @cached_property
    def _by_piece(self) -> dict[int, list[Imported]]:
        """The imports of the pieces that were asked about."""
        return {}

    @cached_property
    def _stars(self) -> list[Imported]:
        """What is imported whole, in order."""
        places = (one for one in self._keywords if _STAR.match(self.source.data, one.end))
        return [one for one in self._at(places) if one.name == "*"]


def _of_statement(source: Source, statement: Node) -> list[Imported]:
    """Return what an import statement binds."""
    names = statement.children_by_field_name("name")
    if statement.type == "import_statement":
        return [_plain(source, node) for node in names]
    if statement.type != "import_from_statement":
        return []
    module = statement.child_by_field_name("module_name")
    if module is None:
        return []
    text = re.sub(r"\s", "", source.text(module))
    dots = len(text) - len(text.lstrip("."))
    path, up = _words(text[dots:]), dots - 1 if dots else None
    found = []
    for node in names:
        name, local = _names(source, node)
        found.append(Imported(local, path, name, up))
    if any(child.type == "wildcard_import" for child in statement.children):
        found.append(Imported("*", path, "*", up))
    return found


def origin(source: Source, name: Node) -> tuple[str, str] | None:
    """Return the module and the name there that an import gives a name; None within a ``try``."""
    node, imported = name, name
    found: tuple[str, str] | None = None
    while node.parent is not None:
        imported, node = node if found is None else imported, node.parent
        if node.type == "try_statement":
            return None
        if node.type in {"import_statement", "import_from_statement"}:
            module = node.child_by_field_name("module_name")
            whole = imported.child_by_field_name("name") or imported
            found = (source.text(module) if module is not None else "", source.text(whole))
    return found


def _plain(source: Source, node: Node) -> Imported:
    name, local = _names(source, node)
    module = _words(name)
    return Imported(local if node.type == "aliased_import" else module[0], module, None, None)


def _names(source: Source, node: Node) -> tuple[str, str]:
    """Return the imported name and what it is called here."""
    name = node.child_by_field_name("name") if node.type == "aliased_import" else node
    alias = node.child_by_field_name("alias")
    text = re.sub(r"\s", "", source.text(name or node))
    return text, source.text(alias) if alias is not None else text


def _words(dotted: str) -> Path:
    return tuple(dotted.split(".")) if dotted else ()


def _imports(one: Imported, word: str) -> list[Import]:
    """Return the places where an imported name may be defined: in a module, or as a module."""
    if one.name is None and word.endswith(CALLED):  # a module is not called
        return []
    if one.name is None:
        whole = one.local == one.module[0] and len(one.module) > 1
        under = one.module[1:] if whole else ()
        return [Import(word, _files(one.module), (), None, under)]
    called = CALLED if word.endswith(CALLED) else ""
    name = word if one.name == "*" else one.name + called
    found = [Import(word, _files(one.module), (name,), one.up)]
    if one.name != "*" and not called:
        found.append(Import(word, _files((*one.module, name)), (), one.up))
    return found


def _files(module: Path) -> tuple[str, ...]:
    base = "/".join(module)
    return (f"{base}.py", f"{base}/__init__.py") if base else ("__init__.py",)
