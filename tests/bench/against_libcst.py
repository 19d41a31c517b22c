"""The audit of all installed Python files, beside a LibCST script that visits the same files.

The script is the plain way to write such a check: parse each file, visit every
call, note the literals of the look-ups; the files are shared out to two processes.
"""

from __future__ import annotations

import sys
import tempfile
import time
from multiprocessing import Pool
from pathlib import Path

import libcst as cst
from measuring import best, namegen, verdict

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from real.installed_code import copied_to

LEAST_RATIO, MEGABYTES = 10.0, 250.0
AT = {"getattr": 1, "get": 0, "getLogger": 0}


class Names(cst.CSTVisitor):
    """Collects the literal names that the three look-ups get."""

    def __init__(self) -> None:
        self.found: list[str] = []

    def visit_Call(self, node: cst.Call) -> None:
        """Note the name of one call, if it is a look-up with a literal."""
        called = _last_word(node.func)
        at = AT.get(called)
        if at is None or at >= len(node.args):
            return
        if called == "get" and _last_word(getattr(node.func, "value", node.func)) != "environ":
            return
        value = node.args[at].value
        if isinstance(value, cst.SimpleString):
            self.found.append(str(value.evaluated_value))


def _last_word(node: cst.BaseExpression) -> str:
    if isinstance(node, cst.Attribute):
        node = node.attr
    return node.value if isinstance(node, cst.Name) else ""


def visit(path: str) -> int:
    """Return how many names one file looks up; -1 when LibCST cannot read it."""
    names = Names()
    try:
        cst.parse_module(Path(path).read_bytes()).visit(names)
    except (cst.ParserSyntaxError, RecursionError, UnicodeDecodeError):
        return -1
    return len(names.found)


def main() -> int:
    """Measure both on one copy of the files."""
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        code = copied_to(root, tests_too=False)
        paths = sorted(str(path) for path in root.rglob("*.py"))
        size = sum(Path(path).stat().st_size for path in paths) / 1e6
        print(f"{code.files} files, {size:.1f} MB, {len(code.names)} names", end=" ")
        print(f"in {len(code.sites)} literals")
        audit = best(namegen("audit"), root, runs=3, codes=[0, 1])
        began = time.perf_counter()
        with Pool(2) as pool:
            counts = pool.map(visit, paths, chunksize=16)
        libcst = time.perf_counter() - began
    print(f"{'':28} {'s':>7} {'MB/s':>6} {'peak MB':>8}")
    print(f"{'namegen audit':28} {audit.seconds:7.2f} {size / audit.seconds:6.1f}", end="")
    print(f" {audit.megabytes:8.0f}")
    print(f"{'LibCST, two processes':28} {libcst:7.2f} {size / libcst:6.1f}")
    print(f"LibCST found {sum(n for n in counts if n > 0)} literals", end=" ")
    print(f"and could not read {counts.count(-1)} files")
    return verdict(
        [
            ("audit in times of LibCST", audit.seconds / libcst, 1 / LEAST_RATIO),
            ("audit's peak memory, MB", audit.megabytes, MEGABYTES),
            ("files missing to 3,000", max(0, 3000 - code.files), 0),
        ]
    )


if __name__ == "__main__":
    sys.exit(main())
