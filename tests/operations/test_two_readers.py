"""Two processes read the same as one, and none is waited for in vain."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from namegen.model.workspaces import LookupRule
from namegen.operations import two_readers
from namegen.operations.code_reader import CodeReader
from namegen.operations.files import Folder

COUNT = two_readers.ENOUGH + 1
PATHS = [f"part{n}.py" for n in range(COUNT)]


@pytest.fixture
def folder(tmp_path: Path) -> Folder:
    for n, path in enumerate(PATHS):
        text = f'from part{(n + 1) % COUNT} import OTHER\nNAME = "lamp{n}"\nboat.lamp(NAME)\n'
        (tmp_path / path).write_text(text + f'OTHER = "sail{n}"\nboat.lamp(OTHER)\n')
    (tmp_path / PATHS[3]).write_bytes(b"\xff boat.lamp('a')")
    return Folder(tmp_path)


def reader_of(folder: Folder) -> CodeReader:
    return CodeReader(folder, [LookupRule("call", "lamp")], [""])


def test_two_read_the_same_as_one(folder: Folder, monkeypatch: pytest.MonkeyPatch):
    together = two_readers.read_all(reader_of(folder).facts, PATHS)
    monkeypatch.setattr(two_readers, "_can_fork", lambda: False)
    assert together == two_readers.read_all(reader_of(folder).facts, PATHS)
    assert [facts.path for facts in together] == PATHS
    assert together[3].unreadable
    assert sum(len(facts.lookups) for facts in together) == 2 * (COUNT - 1)


@pytest.mark.skipif(not two_readers._can_fork(), reason="needs two processors and fork")
def test_a_second_process_that_is_ended_costs_nothing_but_time(
    folder: Folder, monkeypatch: pytest.MonkeyPatch
):
    expected = two_readers.read_all(reader_of(folder).facts, PATHS)
    monkeypatch.setattr(two_readers, "_read", lambda *_: os._exit(9))
    assert two_readers.read_all(reader_of(folder).facts, PATHS) == expected
    assert sum(len(facts.literals) for facts in expected) >= COUNT - 1
