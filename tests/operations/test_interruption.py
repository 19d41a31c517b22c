"""A process killed at any instant leaves every file wholly old or wholly new.

The run is a process of its own, which ends itself without any clean-up just before
its n-th change of the file system, for every n until it comes through.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from namegen.operations import build, fix
from namegen.operations.build import State
from namegen.operations.code_files import ALL
from namegen.operations.record import RECORD_FILE
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import lay

KILLED = 9
CHANGES = {"os.rename", "os.remove", "os.chmod", "os.mkdir", "os.truncate"}

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs os.fork")


def killed(run: Callable[[], None], point: int) -> bool:
    """Run in a process that ends before its change number ``point``; return whether it did."""
    child = os.fork()
    if child:
        code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        assert code in {0, KILLED}, "the run failed by itself"
        return code == KILLED
    left = point

    def count(event: str, args: tuple[object, ...]) -> None:
        nonlocal left
        writes = event == "open" and isinstance(args[2], int) and args[2] & os.O_WRONLY
        if writes or event in CHANGES:
            if left == 0:
                os._exit(KILLED)
            left -= 1

    try:
        sys.addaudithook(count)
        run()
    except BaseException:
        os._exit(1)
    os._exit(0)


def killed_runs(prepared: Callable[[], Callable[[], None]]) -> Iterator[None]:
    """Come back after each killed run, until one run comes through."""
    for point in range(200):
        ended = killed(prepared(), point)
        yield
        if not ended:
            assert point > 3, "the run was never killed, so this proved nothing"
            return
    raise AssertionError("the run never came through")


def test_build_killed_at_any_change_leaves_whole_files_of_ours(boats: Path):
    workspace = open_workspace(boats)
    build.write(build.plan(workspace))
    old = {p: (boats / p).read_bytes() for p in ("code/heron/devices.py", "config/heron.json")}
    manifest = boats / "robots/heron.yaml"
    manifest.write_text(manifest.read_text().replace("bridge motor 1", "bridge motor 3"))
    new = {o.path: o.artifact.text.encode() for o in build.plan(open_workspace(boats)).outputs}
    record = (boats / RECORD_FILE).read_bytes()

    def prepared() -> Callable[[], None]:
        for path, data in old.items():
            (boats / path).write_bytes(data)
        (boats / RECORD_FILE).write_bytes(record)
        stale = open_workspace(boats)
        planned = build.plan(stale)
        return lambda: build.write(planned) and None

    for _ in killed_runs(prepared):
        for path, data in old.items():
            assert (boats / path).read_bytes() in (data, new[path])
        again = open_workspace(boats)
        planned = build.plan(again)
        assert {o.state for o in planned.outputs} <= {State.CURRENT, State.STALE}
        build.write(planned)
        assert {p: (boats / p).read_bytes() for p in new} == new
        assert not list(boats.rglob("*.namegen-part"))


def test_fix_killed_at_any_change_leaves_whole_files(boats: Path):
    wrong = {
        f"code/heron/part{n}.py": f'bow = boat.motor("bowthruster")  # {n}\n' for n in range(3)
    }
    right = {p: text.replace("bowthruster", "bowThruster") for p, text in wrong.items()}

    def prepared() -> Callable[[], None]:
        workspace = open_workspace(lay(boats, wrong))
        fixed = fix.fix(workspace, ALL, fix.SAFE)
        return lambda: fix.write(workspace, fixed)

    for _ in killed_runs(prepared):
        for path, text in wrong.items():
            assert (boats / path).read_text() in (text, right[path])
        workspace = open_workspace(boats)
        fix.write(workspace, fix.fix(workspace, ALL, fix.SAFE))
        assert {path: (boats / path).read_text() for path in right} == right
