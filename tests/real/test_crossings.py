"""Names crossed in code that no one here wrote are told, and hardly any variable as it stands.

A small, seeded version of ``tests/bench/crossed.py``. Checked from outside: `ast` says which
variables bear the very name that they are filled with.
"""

from __future__ import annotations

import random
import shutil
from itertools import islice
from pathlib import Path

import pytest

from real.crossings import PYTHON, Filled, cross, crossed, python_filled, settle
from real.installed_code import installed


@pytest.fixture(scope="module")
def tree(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[Filled], int]:
    """Return a workspace of the first files that name variables for look-ups, and its hits."""
    root = tmp_path_factory.mktemp("crossed")
    named = ((top, path) for top, path in installed() if any(python_filled(top, path)))
    for top, path in islice(named, 60):
        copy = root / "code" / top.name / path.relative_to(top)
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, copy)
    assert settle(root, PYTHON) > 300
    filled = [one for path in sorted(root.rglob("*.py")) for one in python_filled(root, path)]
    return root, filled, len(crossed(root))


def test_code_as_it_is_gives_hardly_a_hit(tree: tuple[Path, list[Filled], int]):
    assert tree[2] <= 3  # read by eye: tests/bench/README.md


@pytest.mark.parametrize("mode", ["copied", "swapped"])
def test_crossed_names_are_told(tree: tuple[Path, list[Filled], int], mode: str):
    root, filled, _ = tree
    originals = {one.path: (root / one.path).read_bytes() for one in filled}
    done = cross(root, filled, mode, random.Random(7))
    found = {(hit["path"], hit["line"]) for hit in crossed(root)}
    for path, data in originals.items():
        (root / path).write_bytes(data)
    assert len(done) > 15
    missed = [one for one in done if (one.path, one.line) not in found]
    assert len(missed) <= 0.1 * len(done), missed
