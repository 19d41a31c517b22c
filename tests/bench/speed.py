"""The audit beside public tools on code that no one here wrote, in one run.

The trees are the installed Python files (look-ups ``getLogger`` and ``environ.get``)
and, where Debian's openjdk-17-source lies on the machine, java.base (``getProperty``).
The names are the 40 commonest literals. ripgrep, counting the look-ups' names on the
same files, is 1.0; the others are what people would otherwise run over a tree.
"""

from __future__ import annotations

import os
import re
import shutil
import sys
import tempfile
import zipfile
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import yaml
from measuring import Measurement, measure, namegen, verdict

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from real.installed_code import installed

JDK = Path("/usr/lib/jvm/openjdk-17/lib/src.zip")
MOST_TIMES, MOST_SECONDS, MOST_MEGABYTES, ENOUGH = 35.0, 0.45, 250.0, 3_000
RUNS = 3
NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_.]{3,}")
STUDENT = 'from boatlib import boat\n\nboat.lamp("mastLamp").on()\n'


@dataclass(frozen=True)
class Tree:
    """A kind of code to measure on: its look-ups, and how the other tools are asked about it."""

    title: str
    suffix: str
    lookups: Sequence[Mapping[str, str]]
    words: Sequence[str]
    """What ripgrep counts."""
    literal: re.Pattern[str]
    """What finds the names, by no way that namegen knows."""
    pattern: str
    """What ast-grep looks for."""


PYTHON = Tree(
    "installed Python",
    ".py",
    [{"call": "getLogger"}, {"call": "get", "on": "environ"}],
    ["-e", "getLogger", "-e", "environ"],
    re.compile(r"(?:getLogger|environ\.get)\(\s*[\"']([^\"'\\\n]*)[\"']"),
    "logging.getLogger($NAME)",
)
JAVA = Tree(
    "java.base",
    ".java",
    [{"call": "getProperty"}],
    ["-e", "getProperty"],
    re.compile(r"\bgetProperty\(\s*\"([^\"\\\n]*)\""),
    "System.getProperty($NAME)",
)


def python_files(folder: Path) -> None:
    """Copy the installed Python files."""
    for top, path in installed():
        copy = folder / top.name / path.relative_to(top)
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, copy)


def java_files(folder: Path) -> None:
    """Unpack java.base."""
    with zipfile.ZipFile(JDK) as archive:
        for name in archive.namelist():
            if name.startswith("java.base/") and name.endswith(".java"):
                archive.extract(name, folder)


def declare(root: Path, tree: Tree, names: Sequence[str], folders: Sequence[str]) -> None:
    """Make a workspace whose devices bear the names."""
    settings = {
        "robots": ["real.yaml"],
        "lookups": list(tree.lookups),
        "code": [{"path": folder, "robots": ["real"]} for folder in folders],
    }
    devices = {name: {"kind": "motor", "port": "undecided"} for name in names}
    robot = {"robot": "real", "controllers": {}, "devices": devices}
    (root / "namegen.yaml").write_text(yaml.dump(settings), encoding="utf-8")
    (root / "real.yaml").write_text(yaml.dump(robot), encoding="utf-8")


def literals(folder: Path, tree: Tree) -> list[str]:
    """Return all literals that look like names, the commonest first."""
    counted: Counter[str] = Counter()
    for path in folder.rglob(f"*{tree.suffix}"):
        text = path.read_text(encoding="utf-8", errors="replace")
        counted.update(name for name in tree.literal.findall(text) if NAME.fullmatch(name))
    return [name for name, _ in sorted(counted.items(), key=lambda row: (-row[1], row[0]))]


def rivals(tree: Tree) -> Iterator[tuple[str, list[str] | None]]:
    """Yield the other tools' commands, or None for one that is not installed."""
    beside = Path(sys.executable).parent
    script = str(Path(__file__).with_name("libcst_visit.py"))
    commands = {
        "ripgrep": ["rg", "--count", "--no-ignore", "--fixed-strings", *tree.words, "code"],
        "typos": ["typos", "--no-ignore", "--format", "silent", "code"],
        "ast-grep": ["ast-grep", "run", "--no-ignore", "hidden", "-l", tree.suffix[1:]],
    }
    commands["ast-grep"] += ["-p", tree.pattern, "code"]
    if tree is PYTHON:
        commands["ruff F, no cache"] = ["ruff", "check", "--isolated", "--select", "F"]
        commands["ruff F, no cache"] += ["--no-cache", "--no-respect-gitignore", "-q", "code"]
        commands["LibCST, two processes"] = [sys.executable, script, "code"]
    for title, (tool, *words) in commands.items():
        found = shutil.which(tool) or shutil.which(tool, path=str(beside))
        yield title, [found, *words] if found else None


def in_turns(commands: Mapping[str, list[str]], root: Path) -> dict[str, Measurement]:
    """Return the fastest run of each; they run in turns, so that a busy moment strikes all."""
    fastest: dict[str, Measurement] = {}
    for turn in range(RUNS):
        for title, command in commands.items():
            if turn and fastest[title].seconds > 20:
                continue  # a slow one need not be slow three times
            run = measure(command, root)
            if title not in fastest or run.seconds < fastest[title].seconds:
                fastest[title] = run
    return fastest


def race(root: Path, tree: Tree, files: int) -> list[tuple[str, float, float]]:
    """Run all tools on the tree, print a table, and return the bounds."""
    commands = {"namegen audit": namegen("audit")}
    for title, command in rivals(tree):
        if command is None:
            print(f"  {title} is not installed: left out")
        else:
            commands[title] = command
    done = in_turns(commands, root)
    if "ripgrep" not in done:
        print("  without ripgrep there is no unit to count in")
        return []
    unit, own = done["ripgrep"].seconds, done["namegen audit"]
    print(f"  {'':24} {'s':>7} {'x rg':>7} {'CPU s':>7} {'peak MB':>8} {'exit':>5}")
    for title, run in sorted(done.items(), key=lambda row: row[1].seconds):
        print(f"  {title:24} {run.seconds:7.3f} {run.seconds / unit:7.1f}", end="")
        print(f" {run.cpu:7.2f} {run.megabytes:8.0f} {run.code:5}")
    others = [
        run.seconds for title, run in done.items() if title not in ("ripgrep", "namegen audit")
    ]
    return [
        (f"{tree.title}: audit in times of ripgrep", own.seconds / unit, MOST_TIMES),
        (f"{tree.title}: audit in times of the next tool", own.seconds / min(others), 1.0),
        (f"{tree.title}: peak memory, MB", own.megabytes, MOST_MEGABYTES),
        (f"{tree.title}: files missing to {ENOUGH}", max(0, ENOUGH - files), 0),
    ]


def growth(root: Path, tree: Tree, names: Sequence[str]) -> None:
    """Print the cost at one, two and four times the files, and the names."""
    for copy in ("code2", "code3", "code4"):
        shutil.copytree(root / "code", root / copy)
    folders = ["code", "code2", "code3", "code4"]
    for times in (1, 2, 4):
        declare(root, tree, names[:40], folders[:times])
        run = in_turns({"": namegen("audit")}, root)[""]
        print(f"  {times}x files: {run.seconds:6.2f} s {run.megabytes:5.0f} MB")
    for count in (40, 80, 160):
        more = [*names[:count], *(f"device{n}" for n in range(count - len(names[:count])))]
        declare(root, tree, more, ["code"])
        run = in_turns({"": namegen("audit")}, root)[""]
        print(f"  {count:3} names: {run.seconds:6.2f} s {run.megabytes:5.0f} MB")


def student(root: Path) -> tuple[str, float, float]:
    """Measure one small file from start to end."""
    (root / "code").mkdir()
    (root / "code" / "main.py").write_text(STUDENT, encoding="utf-8")
    declare(root, Tree("", "", [{"call": "lamp"}], [], NAME, ""), ["mastLamp"], ["code"])
    run = min((measure(namegen("audit"), root) for _ in range(10)), key=lambda run: run.seconds)
    assert run.code == 0
    return "one student's file, s", run.seconds, MOST_SECONDS


def main() -> int:
    """Measure on each tree."""
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # what is installed is compiled once
    os.environ.setdefault("PYTHONPYCACHEPREFIX", str(Path(tempfile.gettempdir(), "compiled")))
    bounds: list[tuple[str, float, float]] = []
    for tree, lay_out in ((PYTHON, python_files), (JAVA, java_files)):
        if tree is JAVA and not JDK.exists():
            print("java.base: left out, openjdk-17-source is not installed")
            continue
        with tempfile.TemporaryDirectory() as folder:
            root = Path(folder)
            lay_out(root / "code")
            files = [path for path in root.rglob(f"*{tree.suffix}") if path.is_file()]
            size = sum(path.stat().st_size for path in files) / 1e6
            names = literals(root / "code", tree)
            print(f"{tree.title}: {len(files)} files, {size:.1f} MB, {len(names)} names in all")
            declare(root, tree, names[:40], ["code"])
            bounds += race(root, tree, len(files))
            growth(root, tree, names)
    with tempfile.TemporaryDirectory() as folder:
        bounds.append(student(Path(folder)))
    return verdict(bounds)


if __name__ == "__main__":
    sys.exit(main())
