"""The command as a person meets it: help, exit codes, messages, what it loads."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.operations.conftest import FILES, lay

Run = Callable[..., "subprocess.CompletedProcess[str]"]
HEAVY = {"libcst", "jinja2", "pydantic", "tree_sitter", "yaml", "pathspec", "rapidfuzz"}


@pytest.fixture
def boats(tmp_path: Path) -> Path:
    return lay(tmp_path / "boats", FILES)


def test_help_loads_nothing_heavy():
    script = (
        "import sys\n"
        "from namegen.cli import namegen\n"
        "try: namegen.main(['--help'])\n"
        "except SystemExit: pass\n"
        "print(*sys.modules, file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert {"verify", "build", "audit"} <= set(done.stdout.split())
    assert not HEAVY & set(done.stderr.split())


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("verify",), 0),
        (("verify", "heron"), 0),
        (("verify", "herron"), 2),
        (("audit",), 0),
        (("build", "--stale"), 1),
        (("verify", "--manifest", "none.yaml"), 2),
        (("verify", "--manifest", "robots"), 2),
        (("verify", "--workspace", "."), 0),
        (("verify", "--workspace", ".", "--manifest", "robots/heron.yaml"), 2),
        (("verify", "--catalogue", "catalogue.yaml"), 2),
        (("audit", "code/none.py"), 2),
        (("audit", "namegen.yaml"), 2),
        (("veryfy",), 2),
        (("verify", "--no-such-option"), 2),
        (("explain", "letter-case"), 0),
        (("explain", "bowThruster"), 0),
        (("explain", "bowthruster"), 1),
        (("schema",), 2),
        (("schema", "manifest"), 0),
    ],
)
def test_exit_codes(namegen: Run, boats: Path, words: tuple[str, ...], code: int):
    done = namegen(*words, cwd=boats)
    assert done.returncode == code, done.stdout + done.stderr
    if code == 2:
        assert done.stdout == ""
        assert done.stderr.strip()


def test_input_that_cannot_be_used_says_where_what_and_how_to_mend_it(namegen: Run, boats: Path):
    done = namegen("verify", "herron", cwd=boats)
    assert 'there is no robot "herron"' in done.stderr
    assert 'did you mean "heron"?' in done.stderr


def test_a_mistyped_command_names_the_nearest(namegen: Run, boats: Path):
    assert 'Did you mean "verify"?' in namegen("verfy", cwd=boats).stderr


def test_outside_a_workspace_the_ways_in_are_named(namegen: Run, tmp_path: Path):
    done = namegen("verify", cwd=tmp_path)
    assert done.returncode == 2
    assert "--workspace" in done.stderr and "namegen new" in done.stderr


def test_a_folder_that_is_no_workspace_is_named_with_the_one_below_it(namegen: Run, boats: Path):
    for words in (("verify",), ("compare", "heron", "heron"), ("learn",)):
        done = namegen(*words, "--workspace", "..", cwd=boats)
        assert done.returncode == 2
        assert "no namegen.yaml in this folder" in done.stderr
        assert "did you mean --workspace ../boats?" in done.stderr


def test_the_workspace_is_found_upwards(namegen: Run, boats: Path):
    assert namegen("audit", "main.py", cwd=boats / "code/heron").returncode == 0


def test_an_editors_text_is_shown_as_the_editor_has_it(boats: Path):
    done = subprocess.run(
        [sys.executable, "-m", "namegen", "audit", "--stdin", "code/heron/main.py"],
        cwd=boats,
        input='\n\n\nbow = boat.motor("bowthruster")\n',
        capture_output=True,
        text=True,
        check=False,
    )
    assert '    4 | bow = boat.motor("bowthruster")\n' in done.stdout


def test_a_slip_in_the_path_of_an_editors_text_is_told(boats: Path):
    words = [sys.executable, "-m", "namegen", "audit", "--stdin", "code/hreon/new.py"]
    done = subprocess.run(words, cwd=boats, input="", capture_output=True, text=True, check=False)
    assert done.returncode == 2 and "did you mean a file in code/heron?" in done.stderr


def test_the_line_that_names_a_schema_leads_to_it(namegen: Run, boats: Path):
    last = namegen("schema", "--into", ".schemas", cwd=boats).stdout.splitlines()[-1]
    path = last.removeprefix("# yaml-language-server: $schema=")
    assert (boats / "robots" / path).is_file()


def test_an_audit_of_no_change_does_not_blame_the_language(namegen: Run, boats: Path):
    git = ["git", "-c", "user.name=x", "-c", "user.email=x"]
    for words in (["init", "-q"], ["add", "-A"], ["commit", "-q", "-m", "x"]):
        subprocess.run([*git, *words], cwd=boats, check=True)
    done = namegen("audit", "--since", "HEAD", cwd=boats)
    assert done.returncode == 0
    assert "no file that an audit reads has changed since HEAD" in done.stderr


def test_a_robot_without_a_name_is_not_laid_out_as_a_workspace(namegen: Run, boats: Path):
    done = namegen("new", "robot", cwd=boats)
    assert done.returncode == 2 and "`namegen new robot NAME`" in done.stderr
    assert not (boats / "robot").exists()
    assert namegen("new", "robot", cwd=boats.parent).returncode == 0  # a folder of that name


@pytest.mark.parametrize("listed", [False, True])
def test_a_new_robot_that_the_settings_do_not_name_is_told(namegen: Run, boats: Path, listed: bool):
    settings = FILES["namegen.yaml"]
    one = settings.replace("[robots/*.yaml]", "[robots/heron.yaml]") if listed else settings
    (boats / "namegen.yaml").write_text(one)
    told = namegen("new", "robot", "wren", "--like", "heron", cwd=boats).stdout
    assert ("robots/wren.yaml under `robots` and wren under `code`" in told) == listed


@pytest.mark.parametrize("words", [("--diff",), ("--fix", "--stdin", "code/heron/main.py")])
def test_a_report_that_would_not_be_written_is_refused(
    namegen: Run, boats: Path, words: tuple[str, ...]
):
    for form in (("--report", "json"), ("--output", "out.txt")):
        assert namegen("audit", *words, *form, cwd=boats).returncode == 2
    assert not (boats / "out.txt").exists()


def test_one_manifest_without_a_workspace(namegen: Run, boats: Path):
    (boats / "namegen.yaml").unlink()
    done = namegen("verify", "--manifest", "robots/heron.yaml", cwd=boats)
    assert "no-such-board" in done.stdout
    with_catalogue = namegen(
        "verify", "--manifest", "robots/heron.yaml", "--catalogue", "catalogue.yaml", cwd=boats
    )
    assert with_catalogue.returncode == 0, with_catalogue.stdout


def test_the_json_report_has_every_key_in_order(namegen: Run, boats: Path):
    lay(boats, {"code/heron/main.py": 'bow = boat.motor("bowthruster")\n'})
    done = namegen("audit", "--report", "json", cwd=boats)
    assert done.returncode == 1
    report = json.loads(done.stdout)
    assert list(report) == ["format", "findings", "summary"]
    assert report["format"] == "namegen-report/1"
    case = next(f for f in report["findings"] if f["kind"] == "letter-case")
    assert list(case) == [
        *("kind", "severity", "message", "path", "line", "column", "end_line", "end_column"),
        *("found", "expected", "robot", "fix", "related"),
    ]
    where = {"path": "code/heron/main.py", "line": 1, "column": 19, "end_line": 1, "end_column": 30}
    assert {key: case[key] for key in where} == where
    assert (case["found"], case["expected"], case["robot"]) == (
        "bowthruster",
        "bowThruster",
        "heron",
    )
    assert case["fix"] == {"safety": "safe", "edits": [{**where, "text": "bowThruster"}]}
    assert list(report["summary"]) == ["error", "warning", "note", "files", "lookups"]


def test_a_report_goes_to_a_file(namegen: Run, boats: Path):
    done = namegen("verify", "--report", "json", "--output", "out.json", cwd=boats)
    assert done.stdout == ""
    assert json.loads((boats / "out.json").read_text())["summary"]["error"] == 0


def test_a_closed_pipe_is_no_traceback(boats: Path):
    lay(boats, {"code/heron/main.py": 'x = boat.motor("bowthruster")\n' * 3000})
    command = f'"{sys.executable}" -m namegen audit | head -1'
    done = subprocess.run(
        command, shell=True, cwd=boats, capture_output=True, text=True, check=False
    )
    assert "Traceback" not in done.stderr


def test_a_terminal_that_knows_ascii_only_gets_escapes(boats: Path):
    lay(boats, {"code/heron/main.py": 'x = boat.motor("bowThruster\u0435")\n'})
    done = subprocess.run(
        [sys.executable, "-m", "namegen", "audit"],
        cwd=boats,
        capture_output=True,
        env={**os.environ, "PYTHONIOENCODING": "ascii"},
        check=False,
    )
    assert done.returncode == 1
    assert b"\\u0435" in done.stdout and b"Traceback" not in done.stderr
