"""A remembered build says what a full one would, and any change to what it read is noticed."""

from __future__ import annotations

import json
import os
import shutil
from pathlib import Path

import pytest

from namegen.operations import build, last_build
from namegen.operations.build import Plan, State
from namegen.operations.last_build import VARIABLE, Witness, recall, remember
from namegen.operations.workspace import open_folder, open_workspace

OWN = "target: own\n    to: 'own/{robot}.txt'\n"


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "cache"
    monkeypatch.setenv(VARIABLE, str(folder))
    return folder


@pytest.fixture
def built(boats: Path) -> Path:
    """The boats with an included file, an own target, and a warning, built and remembered."""
    shared, manifest = boats / "shared.yaml", boats / "robots/heron.yaml"
    shared.write_text("devices:\n  spareLamp: {kind: lamp, port: undecided}\n")
    manifest.write_text("includes: [../shared.yaml]\n" + manifest.read_text())
    own = boats / "mine/own"
    own.mkdir(parents=True)
    (own / "target.yaml").write_text(
        "model: 1\ndescription: A word\nper: robot\ntemplate: word.j2\nescapes: [plain_line]\n"
    )
    (own / "word.j2").write_text("{{ robot.name | plain_line }}\n")
    with (boats / "namegen.yaml").open("a") as settings:
        settings.write(f"  - {OWN}templates: mine\n")
    run(boats)
    return boats


def run(root: Path, *robots: str, write: bool = True) -> Plan:
    planned = build.plan(open_folder(Witness(root)), robots)
    remember(planned, robots, build.write(planned) if write else build.NOTHING_WRITTEN)
    return planned


def files(root: Path) -> list[str]:
    return sorted(p.relative_to(root).as_posix() for p in root.rglob("*") if p.is_file())


def test_it_says_what_a_full_build_says(built: Path):
    recalled, planned = recall(built, ()), build.plan(open_workspace(built))
    assert recalled is not None
    assert [f.kind for f in recalled.report.findings] == ["port-undecided"]
    assert recalled.report == planned.report
    assert recalled.record == planned.record
    assert {o.path: o.state for o in recalled.outputs} == {o.path: o.state for o in planned.outputs}
    assert recalled.current
    assert planned.current
    before = {path: (built / path).stat().st_mtime_ns for path in files(built)}
    assert build.write(recalled) == build.NOTHING_WRITTEN
    assert {path: (built / path).stat().st_mtime_ns for path in files(built)} == before


def test_a_change_in_any_file_is_noticed(built: Path):
    """Every file of the workspace but the students' code, one after another."""
    tried = [path for path in files(built) if path not in {"code/heron/main.py"}]
    assert len(tried) >= 9
    for path in tried:
        old = (built / path).read_bytes()
        (built / path).write_bytes(old + b"\n")
        assert recall(built, ()) is None, path
        (built / path).unlink()
        assert recall(built, ()) is None, path
        (built / path).write_bytes(old)
        assert recall(built, ()) is not None, path


def test_templates_in_a_folder_whose_name_looks_like_a_pattern_are_watched(built: Path):
    (built / "mine").rename(built / "mi[n]e")
    settings = built / "namegen.yaml"
    settings.write_text(settings.read_text().replace("templates: mine", 'templates: "mi[n]e"'))
    run(built)
    assert recall(built, ()) is not None
    template = built / "mi[n]e/own/word.j2"
    template.write_text(template.read_text() + "more\n")
    assert recall(built, ()) is None


@pytest.mark.parametrize("new", ["robots/dipper.yaml", "mine/own/more.j2", "mine/other/x"])
def test_a_new_file_among_them_is_noticed(built: Path, new: str):
    (built / new).parent.mkdir(exist_ok=True)
    (built / new).write_text("")
    assert recall(built, ()) is None


def test_other_robots_are_another_build(built: Path):
    assert recall(built, ("heron",)) is None
    run(built, "heron")
    assert recall(built, ("heron",)) is not None


def test_only_a_build_that_left_all_current_is_remembered(built: Path):
    (built / "own/heron.txt").write_text("mine")
    assert State.EDITED in {output.state for output in run(built).outputs}
    assert recall(built, ()) is None
    (built / "own/heron.txt").unlink()
    run(built, write=False)
    assert recall(built, ()) is None
    run(built)
    assert recall(built, ()) is not None
    settings = built / "namegen.yaml"
    settings.write_text(settings.read_text().replace(f"  - {OWN}", ""))
    assert State.LEFT_OVER in {output.state for output in run(built).outputs}
    assert recall(built, ()) is None


def test_an_error_is_never_remembered(built: Path):
    manifest = built / "robots/heron.yaml"
    manifest.write_text(manifest.read_text().replace("bridge motor 2", "bridge motor 99"))
    assert run(built).stopped == ("heron",)
    assert recall(built, ()) is None


def test_links_are_not_taken_on_trust(built: Path, tmp_path: Path):
    outside = tmp_path / "outside"
    shutil.move(built / "own", outside)
    (built / "own").symlink_to(outside)
    assert recall(built, ()) is None  # a build would refuse to write there
    (built / "own").unlink()
    shutil.move(outside, built / "own")
    assert recall(built, ()) is not None
    (built / "mine/own/linked").symlink_to(tmp_path)
    assert recall(built, ()) is None
    run(built)
    assert recall(built, ()) is None


def test_another_namegen_builds_anew(built: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr(last_build, "program", lambda: "another")
    assert recall(built, ()) is None


@pytest.mark.parametrize("text", ["", "{", "[]", "{}", '{"program": 1}', "null", '"\ud800"'])
def test_a_damaged_memory_is_no_memory(built: Path, own_cache: Path, text: str):
    (kept,) = own_cache.iterdir()
    kept.write_text(text, encoding="utf-8", errors="surrogatepass")
    assert recall(built, ()) is None
    run(built)
    assert recall(built, ()) is not None


def test_a_memory_that_lacks_something_is_none(built: Path, own_cache: Path):
    (kept,) = own_cache.iterdir()
    data = json.loads(kept.read_text())
    for field in data:
        kept.write_text(json.dumps({name: data[name] for name in data if name != field}))
        assert recall(built, ()) is None, field


def test_a_cache_that_cannot_be_written_is_no_fault(built: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv(VARIABLE, os.fspath(built / "namegen.yaml"))
    run(built)
    assert recall(built, ()) is None


def test_what_was_not_built_for_long_is_forgotten(built: Path, own_cache: Path):
    (kept,) = own_cache.iterdir()
    os.utime(kept, (0, 0))
    run(built, "heron")
    assert recall(built, ()) is None
    assert recall(built, ("heron",)) is not None
