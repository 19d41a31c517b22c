"""Literals of a Python file become references to generated constants, with their import.

The names that are in scope, and where the imports stand, are read off CPython's
own syntax tree; the text itself is only spliced, so that nothing else changes.
"""

from __future__ import annotations

import ast
import re
import warnings
from collections.abc import Sequence
from pathlib import PurePosixPath

from msgspec import Struct, field

from namegen.errors import UnusableInput
from namegen.languages.edits import spliced
from namegen.languages.python.grammar import parser
from namegen.languages.sources import whole_literal
from namegen.model.facts import ConstantUse
from namegen.model.places import Span


def use_constants(
    utf8: bytes, uses: Sequence[ConstantUse], path: str, roots: Sequence[str]
) -> bytes:
    """Return the text with each literal replaced, and what is needed imported once."""
    scope = _Scope.of(utf8)
    root = parser().parse(utf8).root_node
    edits: list[tuple[Span, bytes]] = []
    for use in uses:
        module = _module(use.file, path, roots)
        reference = scope.reference(module, use.words)
        literal = whole_literal(root, use.literal.span, "string", joined="concatenated_string")
        edits.append((literal, reference.encode("utf-8")))
    return spliced(utf8, [*edits, *scope.import_edits()])


def _module(file: str, path: str, roots: Sequence[str]) -> str:
    """Return the generated module's name as the file at ``path`` would import it."""
    generated = PurePosixPath(file).with_suffix("")
    if generated.parent == PurePosixPath(path).parent:
        return generated.name
    for root in filter(None, roots):  # the workspace itself is no place that imports start from
        if generated.is_relative_to(root) and PurePosixPath(path).is_relative_to(root):
            return ".".join(generated.relative_to(root).parts)
    raise UnusableInput(f"there is no way to import {file} from here")


class _Scope(Struct):
    """The imports of a file, the names that stand in it, and the imports to be added."""

    lines: list[bytes]
    statements: list[ast.Import | ast.ImportFrom]
    header: int
    """Line after which imports may begin: the docstring's and the ``__future__`` imports' last."""
    names: frozenset[str]
    added: dict[str, set[str]] = field(default_factory=dict)
    whole: set[str] = field(default_factory=set)

    @classmethod
    def of(cls, utf8: bytes) -> _Scope:
        try:
            with warnings.catch_warnings():
                warnings.simplefilter("ignore")
                tree = ast.parse(utf8)
        except (SyntaxError, ValueError, RecursionError) as error:
            raise UnusableInput("the file is not valid Python") from error
        statements: list[ast.Import | ast.ImportFrom] = []
        header = 0
        for node in tree.body:
            if isinstance(node, ast.ImportFrom) and node.module == "__future__":
                header = node.end_lineno or 0
            elif isinstance(node, ast.Import | ast.ImportFrom):
                statements.append(node)
            elif isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant) and not header:
                header = node.end_lineno or 0
            else:
                break
        names = frozenset(re.findall(r"[^\W\d]\w*", utf8.decode("utf-8")))
        return cls(utf8.splitlines(keepends=True), statements, header, names)

    def reference(self, module: str, words: Sequence[str]) -> str:
        """Return how the constant is written here, noting the import that it needs."""
        kind, *rest = words
        for node in self.statements:
            if isinstance(node, ast.ImportFrom) and self._means(node, module):
                for alias in node.names:
                    if alias.name == kind:
                        return ".".join([alias.asname or kind, *rest])
            if isinstance(node, ast.Import):
                for alias in node.names:
                    if alias.name == module:
                        return ".".join([alias.asname or module, kind, *rest])
        if kind in self.added.get(module, ()) or kind not in self.names:
            self.added.setdefault(module, set()).add(kind)
            return ".".join(words)
        if module in self.whole or module.split(".", maxsplit=1)[0] not in self.names:
            self.whole.add(module)
            return ".".join([module, *words])
        raise UnusableInput(f"{kind} and {module} already mean something else here")

    def _means(self, node: ast.ImportFrom, module: str) -> bool:
        own = module.rpartition(".")[2]
        return node.module == module if not node.level else node.module == own

    def import_edits(self) -> list[tuple[Span, bytes]]:
        """Return the edits that add what is missing, in the order of the file's own imports."""
        edits = []
        for module, kinds in sorted(self.added.items()):
            simple = next((node for node in self.statements if self._extends(node, module)), None)
            if simple is None:
                edits.append(self._new_line(module, f"from {module} import {_listed(kinds)}"))
            else:
                edits.append(self._extended(simple, kinds))
        edits += [self._new_line(module, f"import {module}") for module in sorted(self.whole)]
        return edits

    def _extends(self, node: ast.Import | ast.ImportFrom, module: str) -> bool:
        """Whether a statement imports from the module, on one line of its own without a comment."""
        if not isinstance(node, ast.ImportFrom) or not self._means(node, module):
            return False
        line = self.lines[node.lineno - 1].decode("utf-8").rstrip()
        plain = all(alias.asname is None and alias.name != "*" for alias in node.names)
        return plain and node.lineno == node.end_lineno and line == ast.unparse(node)

    def _extended(self, node: ast.Import | ast.ImportFrom, kinds: set[str]) -> tuple[Span, bytes]:
        assert isinstance(node, ast.ImportFrom)
        old = [alias.name for alias in node.names]
        new = [*old, *sorted(kinds)]
        if old == sorted(old):
            new.sort()
        text = f"from {'.' * node.level}{node.module} import {', '.join(new)}"
        start = self._start(node.lineno)
        return Span(start, start + len(ast.unparse(node).encode("utf-8"))), text.encode("utf-8")

    def _new_line(self, module: str, statement: str) -> tuple[Span, bytes]:
        """Return the edit that adds an import: in order in the last group, or below the header."""
        end = b"\r\n" if self.lines and self.lines[0].endswith(b"\r\n") else b"\n"
        text = statement.encode("utf-8") + end
        if not self.statements:
            at = self._start(self.header + 1)
            blank = self.header > 0 and self.header < len(self.lines)
            return Span(at, at), (end if blank else b"") + text + (b"" if blank else end)
        group = self._last_group()
        after = [node for node in group if _sorting(node) > (statement.startswith("from"), module)]
        if after and [_sorting(n) for n in group] == sorted(_sorting(n) for n in group):
            at = self._start(after[0].lineno)
        else:
            at = self._start((group[-1].end_lineno or 0) + 1)
        return Span(at, at), text

    def _last_group(self) -> list[ast.Import | ast.ImportFrom]:
        """Return the last imports without a blank line between them."""
        group = [self.statements[-1]]
        for node in reversed(self.statements[:-1]):
            if (node.end_lineno or 0) + 1 < group[0].lineno:
                break
            group.insert(0, node)
        return group

    def _start(self, line: int) -> int:
        """Return the byte where a line (from 1) begins."""
        return sum(len(text) for text in self.lines[: line - 1])


def _listed(kinds: set[str]) -> str:
    return ", ".join(sorted(kinds))


def _sorting(node: ast.Import | ast.ImportFrom) -> tuple[bool, str]:
    """Return the usual order of imports in a group: whole modules first, then by name."""
    if isinstance(node, ast.Import):
        return False, node.names[0].name
    return True, "." * node.level + (node.module or "")
