"""The audit finds every mistake planted in the example, and nothing else."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import yaml

Finding = dict[str, Any]
MISTAKES = yaml.safe_load(Path(__file__).with_name("mistakes.yaml").read_text(encoding="utf-8"))


@pytest.fixture
def findings(boatclub: Path, namegen) -> list[Finding]:
    built = namegen("build", cwd=boatclub)
    assert built.returncode == 0, built.stdout + built.stderr
    audited = namegen("audit", "--report", "json", cwd=boatclub)
    assert audited.returncode == 1, audited.stdout + audited.stderr
    report = json.loads(audited.stdout)
    assert report["format"] == "namegen-report/1"
    return report["findings"]


def place_of(mistake: dict[str, str], folder: Path) -> tuple[str, int, int, int]:
    """Return the file, line, column and end column of a mistake, counted from its text."""
    text = mistake.get("text")
    lines = (folder / mistake["file"]).read_text(encoding="utf-8").split("\n")
    wanted = f'"{text}"' if text else mistake["expression"]
    line = next(number for number, line in enumerate(lines, 1) if wanted in line)
    column = lines[line - 1].index(wanted) + (2 if text else 1)
    return mistake["file"], line, column, column + len(text or wanted)


def test_each_is_found_at_its_place_and_nothing_beside_them(
    boatclub: Path, findings: list[Finding]
):
    expected = {(*place_of(mistake, boatclub), mistake["kind"]) for mistake in MISTAKES}
    found = {
        (f["path"], f["line"], f["column"], f["end_column"], f["kind"])
        for f in findings
        if f["line"] == f["end_line"]
    }
    assert found == expected


def test_each_names_what_stands_there_what_should_and_how_sure_it_is(
    boatclub: Path, findings: list[Finding]
):
    at = {(f["path"], f["line"], f["column"]): f for f in findings}
    for mistake in MISTAKES:
        finding = at[place_of(mistake, boatclub)[:3]]
        if "text" in mistake:
            assert finding["found"] == mistake["text"]
        assert finding["expected"] == mistake.get("expected"), finding["message"]
        fix = finding["fix"]
        assert (fix and fix["safety"]) == mistake.get("fix"), finding["message"]
        if fix:
            assert [edit["text"] for edit in fix["edits"]] == [mistake["expected"]]


def test_bow_is_never_taken_for_stern(findings: list[Finding]):
    stern = next(f for f in findings if f["found"] == "rangeStern")
    assert stern["fix"] is None
    assert "rangeBow" in stern["message"] + json.dumps(stern["related"])
