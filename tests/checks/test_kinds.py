"""Every finding kind says what it is, in a file that bears its name."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

from namegen import checks
from namegen.model.findings import FindingKind

FILES = sorted(
    path
    for path in Path(checks.__file__).parent.glob("*/*.py")
    if re.search(r"^KIND\b", path.read_text(encoding="utf-8"), re.MULTILINE)
)


def kind_in(path: Path) -> FindingKind:
    module = __import__(f"namegen.checks.{path.parent.name}.{path.stem}", fromlist=["KIND"])
    return module.KIND


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_kind_is_named_as_its_file_and_says_all_it_must(path: Path):
    kind = kind_in(path)
    assert kind.name.replace("-", "_") == path.stem
    texts = (kind.what, kind.why, kind.repair, kind.example.flagged, kind.example.mended)
    assert all(text.strip() for text in texts)
    assert kind.example.flagged != kind.example.mended
    for text in (kind.what, kind.why, kind.repair):
        assert text[-1] in ".:)" and text == text.strip()


def test_ranks_are_unique_within_a_group():
    for group in {path.parent for path in FILES}:
        ranks = [kind_in(path).rank for path in FILES if path.parent == group]
        ranked = [rank for rank in ranks if rank is not None]
        assert len(ranked) == len(set(ranked))


def test_the_registry_finds_every_file():
    assert set(checks.kinds()) == {kind_in(path).name for path in FILES}
    assert list(checks.kinds()) == sorted(checks.kinds())


def test_a_name_that_is_no_kind_gives_none():
    for name in ("", "nonsense", "port_taken", "../manifest/port_taken", "__init__", "os"):
        assert checks.kind(name) is None


@pytest.mark.parametrize(
    ("name", "judged"),
    [
        ("port-taken", "manifest"),
        ("cut-by-comment", "manifest"),
        ("unused-device", "code"),
        ("crossed-names", "code"),
        ("misspelt", "look-up"),
        ("not-checkable", "look-up"),
        ("nonsense", None),
    ],
)
def test_where_a_kind_is_judged(name: str, judged: str | None):
    assert checks.where_judged(name) == judged


def test_one_kind_loads_only_its_own_file():
    program = (
        "import sys; from namegen import checks; assert checks.kind('port-taken');"
        "print(*(m for m in sys.modules if m.startswith('namegen.checks.manifest.')))"
    )
    command = [sys.executable, "-c", program]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.stderr == ""
    assert "namegen.checks.manifest.port_taken" in done.stdout.split()
    assert "namegen.checks.manifest.bad_yaml" not in done.stdout.split()


def test_judges_come_in_the_order_of_their_ranks():
    judges = checks.naming_judges()
    ranks = [sys.modules[judge.__module__].KIND.rank for judge in judges]
    assert ranks == sorted(ranks)
