"""An audit after edits reads again what they can touch, and says what a whole audit says."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.operations.audit import Audit, audit_files
from namegen.operations.code_files import code_files
from namegen.operations.code_reader import CodeReader
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import lay

CODE = {
    "code/heron/names.py": 'BOW = "bowThruster"\nSTERN = "sternThruster"\n',
    "code/heron/passed.py": "from names import BOW\n",
    "code/heron/uses.py": "from passed import BOW\n\ndef go(boat):\n    boat.motor(BOW)\n",
    "code/heron/joins.py": (
        'import names\n\ndef go(boat, n):\n    boat.motor(f"{names.STERN}")\n    boat.motor(n)\n'
    ),
    "code/heron/alone.py": 'def go(boat):\n    boat.motor("bowThruster")\n',
    "code/heron/Names.java": 'class Names { static final String BOW = "bowThruster"; }\n',
    "code/heron/Uses.java": "class Uses { Object o = boat.motor(Names.BOW); }\n",
}
EDITS = [
    ("code/heron/names.py", "bowThruster", "bowTruster"),
    ("code/heron/names.py", "sternThruster", "Rudder"),
    ("code/heron/alone.py", "bowThruster", "netWinch"),
    ("code/heron/Names.java", "bowThruster", "bowthruster"),
    ("code/heron/uses.py", "boat.motor(BOW)", 'boat.motor("x")'),
]


def both(root: Path, path: str, data: bytes) -> tuple[Audit, Audit, list[str]]:
    """Return an audit after an edit, anew and with an earlier one, and what the latter read."""
    workspace = open_workspace(root)
    files = code_files(workspace)
    before = audit_files(workspace, files, workspace.folder)
    edited = workspace.folder.with_changes({path: data})
    whole = audit_files(workspace, files, edited)
    read: list[str] = []
    patch = pytest.MonkeyPatch()
    facts = CodeReader.facts
    patch.setattr(CodeReader, "facts", lambda self, path: read.append(path) or facts(self, path))
    with patch.context():
        again = audit_files(workspace, files, edited, before=before)
    patch.undo()
    return whole, again, read


@pytest.mark.parametrize(("path", "old", "new"), EDITS)
def test_it_says_what_a_whole_audit_says(boats: Path, path: str, old: str, new: str):
    lay(boats, CODE)
    assert CODE[path].count(old) == 1
    whole, again, read = both(boats, path, CODE[path].replace(old, new).encode())
    assert again.report == whole.report
    assert again.literals.items() >= whole.literals.items()
    assert list(again.facts) == list(whole.facts)
    assert whole.report.findings
    assert path in read
    assert len(read) < len(CODE)


def test_it_reads_the_files_whose_names_stand_in_an_edited_one(boats: Path):
    lay(boats, CODE)
    path = "code/heron/names.py"
    _, _, read = both(boats, path, CODE[path].replace("bow", "bo").encode())
    # `joins.py` has a name that is not known, which might lie anywhere.
    assert sorted(read) == ["code/heron/joins.py", path, "code/heron/uses.py"]


def test_the_examples_mended_code_gives_the_same_again():
    root = Path(__file__).resolve().parents[2] / "examples" / "boatclub"
    for file in sorted((root / "mended").rglob("*.py")):
        path = file.relative_to(root / "mended").as_posix()
        whole, again, _ = both(root, path, file.read_bytes())
        assert again.report == whole.report
