"""What lets people live with an audit: allowances, accepted findings, changed files, editors."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen.errors import UnusableInput
from namegen.model.findings import Finding
from namegen.operations import fix
from namegen.operations.acceptances import ACCEPTED_FILE
from namegen.operations.audit import accept, audit
from namegen.operations.code_files import ALL, Selection
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

MAIN = "code/heron/main.py"
OTHERS = (
    'a = boat.motor("bowThruster")\nb = boat.motor("sternThruster")\nc = boat.servo("rudder")\n'
)


def found(root: Path, selection: Selection = ALL) -> list[Finding]:
    return list(audit(open_workspace(root), selection).report.findings)


def kinds(root: Path, code: str) -> list[str]:
    lay(root, {MAIN: code, "code/heron/rest.py": OTHERS})
    return [finding.kind for finding in found(root)]


WRONG = 'x = boat.motor("bowthruster")'


@pytest.mark.parametrize(
    "code",
    [
        f"{WRONG}  # namegen: allow letter-case because the old board has it so\n",
        f"# namegen: allow letter-case because of the old board\n{WRONG}\n",
        f"# namegen: allow letter-case because of the old board\n\n# more\n{WRONG}\n",
        f"{WRONG} # namegen:allow unknown-name , letter-case because é\r\n".replace(
            "unknown-name , ", ""
        ),
    ],
)
def test_an_allowance_with_a_reason_is_honoured(boats: Path, code: str):
    assert kinds(boats, code) == []
    assert fix.fix(open_workspace(boats), ALL, fix.SUGGESTED).changes == ()


@pytest.mark.parametrize(
    ("comment", "what"),
    [
        ("namegen: allow letter-case", "gives no reason"),
        ("namegen: allow letter-case because", "gives no reason"),
        ("namegen: allow", "names no kind"),
        ("namegen: allow leter-case because x", 'did you mean "letter-case"'),
    ],
)
def test_an_allowance_that_is_amiss_allows_nothing_and_is_said(
    boats: Path, comment: str, what: str
):
    assert kinds(boats, f"{WRONG}  # {comment}\n") == ["letter-case", "bare-allowance"]
    assert what in found(boats)[1].message


def test_an_allowance_that_is_no_longer_needed_is_said(boats: Path):
    code = OTHERS.replace("\n", "  # namegen: allow letter-case because of then\n", 1)
    assert kinds(boats, code) == ["bare-allowance"]


def test_an_allowance_in_a_string_is_none(boats: Path):
    code = f's = "namegen: allow letter-case because x"; {WRONG}\n'
    assert kinds(boats, code) == ["letter-case"]


def test_accepting_hides_what_is_there_and_shows_what_is_new(boats: Path):
    assert kinds(boats, f"{WRONG}\n") == ["letter-case"]
    assert len(accept(open_workspace(boats)).findings) == 1
    assert kinds(boats, f"\n\n    # moved\n{WRONG}\n") == []
    assert kinds(boats, f"{WRONG}\n{WRONG}\n")[0] == "letter-case"
    assert kinds(boats, f'{WRONG}\ny = boat.motor("bowTruster")\n') == ["misspelt"]


def test_the_accepted_findings_only_shrink(boats: Path):
    kinds(boats, f'{WRONG}\ny = boat.motor("bowTruster")\n')
    assert len(accept(open_workspace(boats)).findings) == 2
    kinds(boats, f'{WRONG}\nz = boat.servo("ruder")\n')
    done = audit(open_workspace(boats))
    assert done.gone.total() == 1
    note = next(one for one in done.report.findings if one.kind == "idle-acceptance")
    assert "misspelt in code/heron/main.py. `namegen audit --accept`" in note.message
    line = (boats / ACCEPTED_FILE).read_text().splitlines()[note.place.line - 1]
    assert line[note.place.column - 1 :].startswith('"line": "y = boat.motor')
    done = accept(open_workspace(boats))
    assert (len(done.findings), done.new) == (1, 1)
    rows = json.loads((boats / ACCEPTED_FILE).read_text())["findings"]
    assert [(row["kind"], row["line"]) for row in rows] == [("letter-case", WRONG)]
    assert [finding.kind for finding in found(boats)] == ["misspelt"]


def test_what_is_accepted_is_told_beside_what_is_new(boats: Path):
    kinds(boats, f"{WRONG}\n")
    accept(open_workspace(boats))
    report = audit(open_workspace(boats)).report
    assert report.clean and [one.kind for one in report.accepted] == ["letter-case"]
    rest = audit(open_workspace(boats), Selection((boats / "code/heron/rest.py",))).report
    assert rest.accepted == ()


def test_an_audit_of_a_part_does_not_call_the_rest_gone(boats: Path):
    kinds(boats, f"{WRONG}\n")
    accept(open_workspace(boats))
    part = Selection((boats / "code/heron/rest.py",))
    assert audit(open_workspace(boats), part).gone.total() == 0


def test_rows_of_the_accepted_findings_that_are_gone_are_one_note(boats: Path):
    kinds(boats, f'{WRONG}\n{WRONG}\ny = boat.motor("bowTruster")\n')
    accept(open_workspace(boats))
    path = boats / ACCEPTED_FILE
    path.write_text(json.dumps(json.loads(path.read_text())))  # all in one line
    kinds(boats, OTHERS)
    notes = [one for one in found(boats) if one.kind == "idle-acceptance"]
    assert len(notes) == 1
    assert "letter-case in code/heron/main.py (2) and misspelt in" in notes[0].message
    assert (notes[0].severity.value, notes[0].place.line) == ("note", 1)


ACCEPT = "accept:\n  - {finding: unused-device, because: it is a spare, device: rudder}\n"


def test_an_acceptance_in_the_manifest_that_code_needs_no_more_is_a_note(boats: Path):
    lay(boats, {"robots/heron.yaml": FILES["robots/heron.yaml"] + ACCEPT})
    assert kinds(boats, "") == ["idle-acceptance"]
    unused = OTHERS.replace('c = boat.servo("rudder")\n', "")
    lay(boats, {"code/heron/rest.py": unused})
    assert found(boats) == []
    # With a name that is not known, nothing is proved: neither unused nor idle.
    lay(boats, {"code/heron/rest.py": OTHERS + "d = boat.servo(name)\n"})
    assert [one.kind for one in found(boats)] == ["not-checkable"]


def test_an_audit_of_a_part_proves_no_acceptance_idle(boats: Path):
    lay(boats, {"robots/heron.yaml": FILES["robots/heron.yaml"] + ACCEPT})
    kinds(boats, "")
    assert found(boats, Selection((boats / "code/heron/rest.py",))) == []


def test_a_damaged_file_of_accepted_findings_is_said(boats: Path):
    (boats / ACCEPTED_FILE).write_text("[]")
    with pytest.raises(UnusableInput, match="accepted findings cannot be read"):
        found(boats)


@pytest.fixture
def git(boats: Path) -> Callable[..., str]:
    """Return a function that runs git in the workspace, which is a repository then."""

    def run(*words: str) -> str:
        return subprocess.run(
            ["git", "-c", "user.name=a", "-c", "user.email=a@b", *words],
            cwd=boats,
            check=True,
            capture_output=True,
            text=True,
        ).stdout

    run("init", "-q")
    run("add", "-A")
    run("commit", "-q", "-m", "first")
    return run


def test_since_a_revision_only_changed_and_new_files_count(boats: Path, git: Callable[..., str]):
    lay(boats, {"code/heron/old.py": WRONG})
    git("add", "-A")
    git("commit", "-q", "-m", "second")
    lay(boats, {MAIN: f"{WRONG}\n", "code/heron/new.py": WRONG})
    paths = {f.place.path for f in found(boats, Selection(since="HEAD"))}
    assert paths == {MAIN, "code/heron/new.py"}
    assert "code/heron/old.py" in {f.place.path for f in found(boats, Selection(since="HEAD~1"))}


@pytest.mark.parametrize("revision", ["nonsense", "--output=x", "-h", ""])
def test_a_revision_that_is_none_is_said(boats: Path, git: Callable[..., str], revision: str):
    if not revision:
        return
    with pytest.raises(UnusableInput, match="git cannot tell") as told:
        found(boats, Selection(since=revision))
    assert told.value.where == f"--since {revision}"
    assert not (boats / "x").exists()


def test_a_repository_cannot_make_git_run_a_program(boats: Path, git: Callable[..., str]):
    trap = boats / "trap.sh"
    trap.write_text("#!/bin/sh\ntouch sprung\ncat\n")
    trap.chmod(0o755)
    for name in ("core.fsmonitor", "diff.external", "filter.trap.clean", "filter.trap.process"):
        git("config", name, str(trap))
    lay(boats, {".gitattributes": "*.py filter=trap diff=trap\n", MAIN: f"{WRONG}\n"})
    git("config", "diff.trap.textconv", str(trap))
    git("config", "diff.trap.command", str(trap))
    assert MAIN in {f.place.path for f in found(boats, Selection(since="HEAD"))}
    assert not list(boats.rglob("sprung"))


def test_what_git_ignores_and_the_entry_excludes_stays_out(boats: Path):
    lay(
        boats,
        {
            ".gitignore": "generated/\n*.tmp.py\n",
            "code/heron/generated/a.py": WRONG,
            "code/heron/x.tmp.py": WRONG,
            "code/heron/sub/.gitignore": "*\n!keep.py\n",
            "code/heron/sub/drop.py": WRONG,
            "code/heron/sub/keep.py": WRONG,
        },
    )
    assert {f.place.path for f in found(boats)} == {"code/heron/sub/keep.py"}
    named = Selection((boats / "code/heron/generated/a.py", boats / "code/heron/x.tmp.py"))
    assert found(boats, named) == []


def test_a_text_from_an_editor_is_judged_instead_of_the_file(boats: Path):
    text = Selection(text=(boats / "code/heron/unsaved.py", WRONG.encode()))
    assert [(f.kind, f.place.path) for f in found(boats, text)] == [
        ("letter-case", "code/heron/unsaved.py")
    ]
    fixed = fix.fix(open_workspace(boats), text, fix.SAFE)
    assert fixed.changes[0].new == WRONG.replace("bowt", "bowT").encode()


def test_a_loop_of_links_ends(boats: Path):
    (boats / "code/heron/loop").symlink_to(boats / "code")
    lay(boats, {MAIN: f"{WRONG}\n"})
    assert len([f for f in found(boats) if f.kind == "letter-case"]) == 1


@pytest.mark.parametrize(
    ("row", "name", "hinted"),
    [
        ("{call: fin, kind: motor}", "dorsal", True),
        ("{call: fin, on: boat, kind: motor}", "dorsal", False),
        ("{call: fin, kind: motor}", "bowThrustr", False),
        ("{new: fin, kind: motor}", "dorsal", False),
    ],
)
def test_a_method_of_ones_own_is_told_apart_by_its_receiver(
    boats: Path, row: str, name: str, hinted: bool
):
    """Without `on:` every method of this name counts, those of the students' own classes too."""
    settings = FILES["namegen.yaml"].replace("{call: servo, kind: servo}", row)
    receiver = "" if "new" in row else "boat."
    lay(boats, {"namegen.yaml": settings, MAIN: f'{receiver}fin("{name}")\n'})
    (said,) = [
        one.message for one in audit(open_workspace(boats)).report.findings if one.found == name
    ]
    assert ("write `on:` with the receiver that counts" in said) is hinted
    assert ("namegen.yaml:6" in said) is hinted
    if hinted:  # doing so helps
        mended = settings.replace("call: fin", "call: fin, on: ship")
        lay(boats, {"namegen.yaml": mended})
        found = audit(open_workspace(boats)).report.findings
        assert name not in {one.found for one in found}
