"""The audit of thousands of files that no one here wrote, against Python's own parser.

Checked from outside: `ast` says which literals are looked up and where they
stand, and `compile` says which files can be read.
"""

from __future__ import annotations

import hashlib
import json
import os
import warnings
from pathlib import Path
from typing import Any

import pytest

from real.installed_code import SOUND, InstalledCode, Site, copied_to

pytestmark = pytest.mark.xdist_group("real")  # one worker, so that the copy is made once

Report = dict[str, Any]
NAMING = {
    "letter-case",
    "look-alike",
    "misspelt",
    "not-in-setup",
    "other-robot",
    "retired-name",
    "unknown-name",
    "wrong-kind",
}
ENOUGH = 3000


@pytest.fixture(scope="module")
def code(tmp_path_factory: pytest.TempPathFactory) -> InstalledCode:
    return copied_to(tmp_path_factory.mktemp("real"))


@pytest.fixture(scope="module")
def audit(code: InstalledCode, namegen):
    def run(*words: str) -> Report:
        done = namegen("audit", *words, "--report", "json", cwd=code.root, timeout=300)
        assert done.returncode in (0, 1), done.stderr
        return json.loads(done.stdout)

    return run


def hashes(folder: Path) -> dict[str, str]:
    """Return a hash of each file's bytes."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_there_are_enough_files(code: InstalledCode):
    if code.files < ENOUGH and not os.environ.get("NAMEGEN_REQUIRE_TOOLS"):
        pytest.skip(f"only {code.files} files are installed here")
    assert code.files >= ENOUGH
    assert len(code.names) > 500


def test_every_literal_that_python_sees_is_found_at_its_place(code: InstalledCode, audit):
    code.declare({"noSuchNameAnywhere"})
    try:
        findings = audit()["findings"]
    finally:
        code.declare(code.names)
    found = {
        Site(f["path"], f["line"], f["column"], f["found"])
        for f in findings
        if f["found"] is not None
    }
    assert code.sites - found == set()


def test_every_file_that_python_compiles_is_read(code: InstalledCode, audit):
    report = audit()
    assert report["summary"]["files"] == code.files
    for path in {f["path"] for f in report["findings"] if f["kind"] == "unreadable"}:
        with pytest.raises((SyntaxError, ValueError)), warnings.catch_warnings():
            warnings.simplefilter("ignore")
            compile((code.root / path).read_bytes(), path, "exec")


def test_right_names_are_left_in_peace_and_every_byte_stays(code: InstalledCode, audit):
    at_first = [f for f in audit(str(SOUND))["findings"] if f["kind"] in NAMING]
    assert not {f["found"] for f in at_first} & code.names
    # What is left are names that stand in constants or are joined from pieces: they exist too.
    code.declare(code.names | {f["found"] for f in at_first})
    before = hashes(code.root)
    left = audit("--fix")["findings"]
    assert [f for f in left if f["kind"] in NAMING and f["path"].startswith(str(SOUND))] == []
    assert hashes(code.root) == before
