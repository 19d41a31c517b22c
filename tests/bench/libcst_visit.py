"""The plain way to check look-ups: LibCST parses and visits every file, on two processes."""

from __future__ import annotations

import sys
from multiprocessing import Pool
from pathlib import Path

import libcst as cst


class Names(cst.CSTVisitor):
    """Collects the literals that ``getLogger`` and ``environ.get`` get."""

    def __init__(self) -> None:
        self.found: list[str] = []

    def visit_Call(self, node: cst.Call) -> None:
        """Note the name of one call, if it is a look-up with a literal."""
        words = _words(node.func)
        if not node.args or not (words[-1:] == ["getLogger"] or words[-2:] == ["environ", "get"]):
            return
        value = node.args[0].value
        if isinstance(value, cst.SimpleString):
            self.found.append(str(value.evaluated_value))


def _words(node: cst.BaseExpression) -> list[str]:
    if isinstance(node, cst.Attribute):
        return [*_words(node.value), node.attr.value]
    return [node.value] if isinstance(node, cst.Name) else []


def visit(path: Path) -> int:
    """Return how many names one file looks up; -1 when LibCST cannot read it."""
    names = Names()
    try:
        cst.parse_module(path.read_bytes()).visit(names)
    except (cst.ParserSyntaxError, RecursionError, UnicodeDecodeError):
        return -1
    return len(names.found)


if __name__ == "__main__":
    with Pool(2) as pool:
        counts = pool.map(visit, sorted(Path(sys.argv[1]).rglob("*.py")), chunksize=16)
    print(f"{sum(n for n in counts if n > 0)} literals, {counts.count(-1)} files not read")
