"""Counts what ``crossed-names`` says of code that no one here wrote, before and after crossing.

Run from the project's folder: ``python tests/bench/crossed.py [SEED...]``. Each literal that a
tree looks up is a device, all of one kind: some 3,000 names, where a robot has 40, so that far
more variables bear a device's name by chance. Each hit in the trees as they are is printed, to be
read by eye. Then names are crossed in each file where variables are named for what they look up.
The trees are the installed Python files and all of Debian's openjdk-17-source.
"""

from __future__ import annotations

import random
import shutil
import sys
import tempfile
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from real.crossings import (
    JAVA,
    MODES,
    PYTHON,
    Filled,
    cross,
    crossed,
    java_filled,
    python_filled,
    settle,
)
from real.installed_code import installed

JDK = Path("/usr/lib/jvm/openjdk-17/lib/src.zip")


def lay_python(root: Path) -> None:
    """Copy the installed files."""
    for top, path in installed():
        copy = root / "code" / top.name / path.relative_to(top)
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, copy)


def lay_java(root: Path) -> None:
    """Unpack the JDK's sources."""
    with zipfile.ZipFile(JDK) as archive:
        for name in archive.namelist():
            if name.endswith(".java"):
                archive.extract(name, root / "code")


def run(
    title: str, root: Path, reader: Callable[[Path, Path], Iterator[Filled]], seeds: list[int]
) -> None:
    """Count the hits in a tree as it is, and then with names crossed."""
    suffix, rows = (".py", PYTHON) if title == "Python" else (".java", JAVA)
    names = settle(root, rows)
    hits = crossed(root)
    print(f"{title}: {names} names; hits in the tree as it is: {len(hits)}")
    for hit in hits:
        line = (root / str(hit["path"])).read_bytes().split(b"\n")[int(str(hit["line"])) - 1]
        print(f"    {hit['path']}:{hit['line']}: {line.strip().decode('utf-8', 'replace')[:90]}")
    before = {(hit["path"], hit["line"]) for hit in hits}
    paths = sorted((root / "code").rglob(f"*{suffix}"))
    filled = [one for path in paths if path.is_file() for one in reader(root, path)]
    originals = {one.path: (root / one.path).read_bytes() for one in filled}
    for mode in MODES:
        for seed in seeds:
            done = cross(root, filled, mode, random.Random(seed))
            found = {(hit["path"], hit["line"]) for hit in crossed(root)}
            told = sum((one.path, one.line) in found for one in done)
            beside = len(found - before - {(one.path, one.line) for one in done})
            print(
                f"    {mode:8} seed {seed}: {told} of {len(done)} told "
                f"({100 * told / len(done):.1f} %), other lines newly told: {beside}"
            )
            for path, data in originals.items():
                (root / path).write_bytes(data)


def main(seeds: list[int]) -> None:
    """Run on each tree with each seed."""
    for title, lay, reader in (
        ("Python", lay_python, python_filled),
        ("Java", lay_java, java_filled),
    ):
        if title == "Java" and not JDK.exists():
            print(f"{title}: {JDK} is missing; Debian's openjdk-17-source has it")
            continue
        root = Path(tempfile.mkdtemp())
        try:
            lay(root)
            run(title, root, reader, seeds)
        finally:
            shutil.rmtree(root)


if __name__ == "__main__":
    main([int(word) for word in sys.argv[1:]] or [1, 2, 3])
