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
from tree_sitter import Node

from namegen.errors import UnusableInput
from namegen.languages.edits import spliced
from namegen.languages.python.grammar import parser
from namegen.languages.sources import whole_literal
from namegen.model.facts import ConstantUse, Surroundings
from namegen.model.places import Span


def use_constants(utf8: bytes, uses: Sequence[ConstantUse], here: Surroundings) -> bytes:
    """Return the text with each literal replaced, and what is needed imported once."""
    scope = _Scope.of(utf8, here.exposed)
    root = parser().parse(utf8).root_node
    edits: list[tuple[Span, bytes]] = []
    for use in uses:
        module = _module(use.file, here, scope.relative)
        reference = scope.reference(module, use.words)
        literal = whole_literal(root, use.literal.span, "string", joined="concatenated_string")
        _check_type(root, literal)
        edits.append((literal, reference.encode("utf-8")))
    return spliced(utf8, [*edits, *scope.import_edits()])


def _check_type(root: Node, literal: Span) -> None:
    """Make sure that a literal may be another expression of the same text.

    Raises:
        UnusableInput: its type says that it is this very text.
    """
    node = root.descendant_for_byte_range(literal.start, literal.end)
    while node is not None and node.type != "assignment":
        node = node.parent
    declared = node.child_by_field_name("type") if node is not None else None
    if declared is not None and re.search(rb"\bLiteral\b", declared.text or b""):
        raise UnusableInput("its type is that very text (Literal), which a constant is not")


def _module(file: str, here: Surroundings, relative: bool) -> str:
    """Return the generated module's name as the file ``here`` would import it.

    Beside it, in a package, it goes by the way of the file's own imports, ``relative`` or not.
    """
    generated, own = PurePosixPath(file).with_suffix(""), PurePosixPath(here.path)
    beside = generated.parent == own.parent
    inner = beside and str(own.parent) not in here.roots
    if inner and relative:
        return f".{generated.name}"
    if beside and not (inner and here.packaged):
        return generated.name
    for root in filter(None, here.roots):  # the workspace itself is no place to start from
        if generated.is_relative_to(root) and own.is_relative_to(root):
            return ".".join(generated.relative_to(root).parts)
    raise UnusableInput(f"there is no way to import {file} from here")


_READ = re.compile(rb"#!|#.*coding[:=]")
"""A comment that is more: PEP 263 gives the encoding's."""


class _Scope(Struct):
    """The imports of a file, the names that stand in it, and the imports to be added."""

    lines: list[bytes]
    statements: list[ast.Import | ast.ImportFrom]
    header: int
    """Line after which imports may begin: the docstring's and the ``__future__`` imports' last."""
    names: frozenset[str]
    exposed: bool
    """Whether other files import all names of this one, but for those that begin with ``_``."""
    added: dict[str, set[str]] = field(default_factory=dict)
    whole: dict[str, str] = field(default_factory=dict)
    """Modules to import, with what each is called here."""

    @classmethod
    def of(cls, utf8: bytes, exposed: bool) -> _Scope:
        text = utf8.decode("utf-8")  # of bytes, Python would take the encoding that they declare
        try:
            with warnings.catch_warnings():
                warnings.simplefilter("ignore")
                tree = ast.parse(text)
        except (SyntaxError, ValueError) as error:
            raise UnusableInput("the file is not valid Python") from error
        except (RecursionError, MemoryError) as error:
            raise UnusableInput("the file is nested too deeply to be changed") from error
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
        names = frozenset(re.findall(r"[^\W\d]\w*", text))
        lines = utf8.splitlines(keepends=True)
        return cls(lines, statements, header or _heading(lines), names, exposed)

    @property
    def relative(self) -> bool:
        """Whether the file imports what lies beside it by a dot."""
        return any(isinstance(one, ast.ImportFrom) and one.level == 1 for one in self.statements)

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
        if not self.exposed and kind not in self.names:
            self.added.setdefault(module, set()).add(kind)
            return ".".join(words)
        own = module.rpartition(".")[2]
        called = f"_{own}" if self.exposed else own if module.startswith(".") else module
        if called.split(".", maxsplit=1)[0] not in self.names:
            self.whole[module] = called
            return ".".join([called, *words])
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
        for module, called in sorted(self.whole.items()):
            own = module.rpartition(".")[2]
            imported = f"from . import {own}" if module.startswith(".") else f"import {module}"
            other = f" as {called}" if called not in {module, own} else ""
            edits.append(self._new_line(module, imported + other))
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
            below = self.lines[self.header] if self.header < len(self.lines) else b""
            above, blank = end if self.header else b"", end if below.strip() else b""
            return Span(at, at), above + text + blank
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


def _heading(lines: Sequence[bytes]) -> int:
    """Return the last line of the comment at the top of a file without a docstring.

    A comment without a blank line below it belongs to the code, but for the two
    lines of which Python or the system reads one: ``#!`` and the encoding.
    """
    count = next((n for n, line in enumerate(lines) if not line.startswith(b"#")), len(lines))
    if count < len(lines) and not lines[count].strip():
        return count
    read = [n for n, line in enumerate(lines[:2], 1) if n <= count and _READ.match(line)]
    return max(read, default=0)


def _listed(kinds: set[str]) -> str:
    return ", ".join(sorted(kinds))


def _sorting(node: ast.Import | ast.ImportFrom) -> tuple[bool, str]:
    """Return the usual order of imports in a group: whole modules first, then by name."""
    if isinstance(node, ast.Import):
        return False, node.names[0].name
    return True, "." * node.level + (node.module or "")
