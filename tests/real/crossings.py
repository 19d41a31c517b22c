"""Variables named for what they look up, in code that no one here wrote, and how to cross them."""

from __future__ import annotations

import ast
import json
import random
import re
import warnings
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

import yaml

from real.slips import namegen

PYTHON = [
    {"call": "getattr", "name_at": 1},
    *({"call": call} for call in ("get", "getLogger", "getenv", "getoption", "group", "pop")),
]
JAVA = [
    {"call": call}
    for call in (
        *("get", "getAddressField", "getAttribute", "getColor", "getInstance", "getOption"),
        *("getParameter", "getProperty", "getString", "getSystemProperty", "getValue", "getenv"),
        *("group", "lookup", "lookupIntConstant", "privilegedGetProperty"),
    )
]
_JAVA_LINE = re.compile(
    rb"(\w+)\s*=\s*(?:\([\w.<>]+\)\s*)?(?:[\w.]+\.)?(\w+)\(\s*\"([A-Za-z_][\w.-]*)\"\s*(?:,|\)\s*;)"
)
_NAME = re.compile(r"[A-Za-z_][\w.-]+")
MODES = ("copied", "swapped", "alone")
"""The text of another line of the file; two such lines exchanged; a text of another file."""


class Filled(NamedTuple):
    """A variable that bears the very name that it is filled with; ``at`` is the text's offset."""

    path: str
    at: int
    line: int
    text: str


def letters(name: str) -> str:
    """Return a name without case and case style."""
    return re.sub(r"[\W_]", "", name).lower()


def python_filled(root: Path, path: Path) -> Iterator[Filled]:
    """Yield what Python's own parser sees in a file."""
    data = path.read_bytes()
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            tree = ast.parse(data)
    except (SyntaxError, ValueError, RecursionError):
        return
    starts = [0, *(found.end() for found in re.finditer(rb"\n", data))]
    for node in ast.walk(tree):
        for holder, value in _fillings(node):
            name = _name_of(value)
            if name is None or letters(holder) != letters(name.value):
                continue
            at = starts[name.lineno - 1] + name.col_offset
            quoted = data[at : at + len(name.value) + 2]
            if quoted[1:-1] == name.value.encode() and quoted[:1] in b"\"'":
                yield Filled(str(path.relative_to(root)), at + 1, name.lineno, name.value)


def _fillings(node: ast.AST) -> Iterator[tuple[str, ast.expr]]:
    if isinstance(node, ast.keyword) and node.arg:
        yield node.arg, node.value
    targets = node.targets if isinstance(node, ast.Assign) else []
    for target in targets:
        word = getattr(target, "id", None) or getattr(target, "attr", None)
        if word:
            yield word, node.value


def _name_of(value: ast.expr) -> ast.Constant | None:
    """Return the name that a look-up gets, if it is a simple one."""
    if not isinstance(value, ast.Call):
        return None
    called = getattr(value.func, "attr", None) or getattr(value.func, "id", None)
    at = {row["call"]: row.get("name_at", 0) for row in PYTHON}.get(called)
    name = value.args[at] if at is not None and at < len(value.args) else None
    simple = isinstance(name, ast.Constant) and isinstance(name.value, str)
    return name if simple and _NAME.fullmatch(name.value) else None


def java_filled(root: Path, path: Path) -> Iterator[Filled]:
    """Yield what a regular expression sees in a file, comments left out."""
    data = path.read_bytes()
    calls = {row["call"].encode() for row in JAVA}
    for found in _JAVA_LINE.finditer(data):
        line = data[data.rfind(b"\n", 0, found.start()) + 1 : found.start()].strip()
        if found[2] not in calls or line.startswith((b"*", b"//", b"/*")):
            continue
        holder, text = found[1].decode(), found[3].decode()
        if letters(holder) == letters(text):
            number = data.count(b"\n", 0, found.start(3)) + 1
            yield Filled(str(path.relative_to(root)), found.start(3), number, text)


def settle(root: Path, lookups: Sequence[dict[str, object]]) -> int:
    """Make a workspace of ``root/code`` whose devices are all that it looks up; return how many.

    All are of one kind, so that each may be crossed with each.
    """
    settings = {
        "robots": ["real.yaml"],
        "lookups": list(lookups),
        "code": [{"path": "code", "robots": ["real"]}],
    }
    (root / "namegen.yaml").write_text(yaml.dump(settings), encoding="utf-8")
    _declare(root, ["noSuchNameAnywhere"])
    found = {str(row["found"]) for row in _audited(root) if str(row["path"]).startswith("code/")}
    names = sorted(name for name in found if _NAME.fullmatch(name))
    _declare(root, names)
    wrong = [row for row in _audited(root) if not str(row["path"]).startswith("code/")]
    errors = [row["message"] for row in wrong if row["severity"] == "error"]
    assert not errors, errors  # by an unsound manifest nothing is judged
    return len(names)


def _declare(root: Path, names: Sequence[str]) -> None:
    parts = [names[start : start + 1000] for start in range(0, len(names), 1000)]
    for number, part in enumerate(parts):  # one file may hold 10,000 values at the most
        devices = {name: {"kind": "motor", "port": "undecided"} for name in part}
        (root / f"part{number}.yaml").write_text(yaml.dump({"devices": devices}), encoding="utf-8")
    included = [f"part{number}.yaml" for number in range(len(parts))]
    text = yaml.dump({"robot": "real", "controllers": {}, "includes": included})
    (root / "real.yaml").write_text(text, encoding="utf-8")


def _audited(root: Path) -> list[dict[str, object]]:
    namegen(root, "audit", "--report", "json", "--output", "report.json")
    rows: list[dict[str, object]] = json.loads((root / "report.json").read_bytes())["findings"]
    return rows


def crossed(root: Path) -> list[dict[str, object]]:
    """Return what an audit calls crossed."""
    return [row for row in _audited(root) if row["kind"] == "crossed-names"]


def cross(root: Path, filled: Iterable[Filled], mode: str, chance: random.Random) -> set[Filled]:
    """Cross one or two names in each file where that can be done; return where."""
    by_path: dict[str, list[Filled]] = defaultdict(list)
    for one in sorted(set(filled)):
        by_path[one.path].append(one)
    everything = sorted({one.text for ones in by_path.values() for one in ones})
    done: set[Filled] = set()
    for path, ones in by_path.items():
        edits = _edits(ones, everything, mode, chance)
        data = (root / path).read_bytes()
        for one, text in sorted(edits.items(), reverse=True):
            end = one.at + len(one.text)
            assert data[one.at : end].decode() == one.text
            data = data[: one.at] + text.encode() + data[end:]
        (root / path).write_bytes(data)
        done |= edits.keys()
    return done


def _edits(
    ones: list[Filled], everything: list[str], mode: str, chance: random.Random
) -> dict[Filled, str]:
    if mode == "alone":
        own = {letters(one.text) for one in ones}
        return {
            chance.choice(ones): chance.choice([t for t in everything if letters(t) not in own])
        }
    pairs = [(a, b) for a in ones for b in ones if letters(a.text) != letters(b.text)]
    if not pairs:
        return {}
    a, b = chance.choice(pairs)
    return {a: b.text, b: a.text} if mode == "swapped" else {a: b.text}
