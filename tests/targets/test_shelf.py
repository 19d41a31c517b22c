"""Targets are found in the bundled folder and the workspace's own, and described well."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from namegen.bundled import bundled
from namegen.errors import UnusableTarget
from namegen.targets.schemes import naming_schemes
from namegen.targets.shelf import load, shelf

SOUND = "model: 1\ndescription: A list.\nper: robot\ntemplate: list.j2\n"


def lay(folder: Path, description: str, name: str = "crew-list") -> Path:
    (folder / name).mkdir(parents=True)
    (folder / name / "target.yaml").write_text(description, encoding="utf-8")
    (folder / name / "list.j2").write_text("{{ 1 }}\n", encoding="utf-8")
    return folder


def test_every_bundled_folder_is_a_target_and_makes_something_for_a_known_language():
    folders = {path.name for path in bundled("templates").iterdir()} - {"languages"}
    targets = load()
    assert set(targets) == folders
    for target in targets.values():
        assert target.language is None or target.language in naming_schemes()
        assert target.description.endswith(".")


def test_the_bundled_folder_may_be_named_as_well():
    assert load([bundled("templates")]) == load()


def test_a_workspace_adds_its_own(tmp_path):
    targets = load([lay(tmp_path, SOUND)])
    assert targets["crew-list"].folder == tmp_path / "crew-list"
    assert set(targets) == {*load(), "crew-list"}


def test_a_workspace_may_not_hide_a_bundled_target(tmp_path):
    with pytest.raises(UnusableTarget, match="there is a target config-json already"):
        load([lay(tmp_path, SOUND, "config-json")])


@pytest.mark.parametrize(
    ("description", "complaint"),
    [
        ("", "holds no fields\n  It wants model, description, per, template."),
        ("model: 1\nper: [", "crew-list/target.yaml:3: is not YAML"),
        (SOUND.replace("A list.", "2026-99-99"), "is not YAML: month must be in 1..12"),
        (SOUND + "\0", "is not YAML: not UTF-8"),
        (SOUND + f"file: {'[' * 20_000}", "crew-list/target.yaml:5: is not YAML: exceeded maximum"),
        (SOUND + "? [a]\n: b\n", "is not YAML: found unhashable key"),
        (SOUND + "file: !!python/name:os.system x\n", "is not YAML: could not determine"),
        ("model: 1\n", "lacks description, per, template\n  It wants model,"),
        (SOUND.replace("A list.", ""), "lacks description"),
        (SOUND + "colour: red\n", "unknown field: colour\n  Known fields: model, description,"),
        (SOUND + "escpes: []\n", "unknown field: escpes; did you mean escapes?"),
        (
            SOUND.replace("1", "7"),
            "model is 7, this namegen offers 1\n  Write `model: 1`, or get a",
        ),
        (SOUND.replace("1", "true"), "model is True, this namegen offers 1"),
        (SOUND.replace("robot", "boat"), "per cannot be 'boat'\n  Write `per: robot` for one file"),
        (SOUND.replace("list.j2", "lsit.j2"), 'no file "lsit.j2"; did you mean "list.j2"?'),
        (SOUND.replace("list.j2", "../x.j2"), 'there is no file "../x.j2"'),
        (SOUND.replace("list.j2", "[list.j2]"), "template cannot be ['list.j2']"),
        (
            SOUND + "language: cobol\n",
            'no language "cobol"\n  There is: cpp, java, kotlin, python.',
        ),
        (SOUND + "language: [java]\n", "language cannot be ['java']"),
        (SOUND + "escapes: json_value\n", "escapes cannot be 'json_value'\n  Write a list in"),
        (SOUND + "escapes: [1]\n", "escapes cannot be [1]"),
        (SOUND + "file: 3\n", "file cannot be 3"),
        (SOUND + "options: [a]\n", "options cannot be ['a']"),
        (SOUND + "options: {a: text}\n", "option a: cannot be 'text'\n  Write {type: text, help:"),
        (SOUND + "options: {a: {typ: text}}\n", 'option a: there is no field "typ"; did you mean'),
        (SOUND + "options: {a: {type: text}}\n", "needs a help text"),
        (
            SOUND + "options: {a: {type: float, help: x}}\n",
            'no type "float"\n  There is: text, bool',
        ),
        (SOUND + "options: {a: {type: [], help: x}}\n", 'there is no type "[]"'),
        (SOUND + "options: {a: {type: texts, help: x, default: [1]}}\n", "default is not a texts"),
        (SOUND + "fields: []\n", "fields wants a language"),
        (SOUND + "language: java\nfields: 1\n", "fields cannot be 1"),
        (SOUND + "options: {a: {type: text, help: x, default: 1}}\n", "default is not a text"),
        (SOUND + "options: {a: {type: text, help: x, pattern: '('}}\n", "no regular expression"),
        (
            SOUND + "options: {a: {type: text, help: x, pattern: x, identifies: it}}\n",
            "neither type nor other",
        ),
        (SOUND + "options: {a: {type: text, help: x, identifies: type}}\n", "wants a text with"),
    ],
)
def test_a_description_that_cannot_be_used(tmp_path, description, complaint):
    with pytest.raises(UnusableTarget) as caught:
        load([lay(tmp_path, description)])
    said = str(caught.value)
    assert said.startswith("crew-list/target.yaml")
    excerpt = re.search(r"^crew-list/target.yaml:(\d+): .*\n +\1 \| (.*)$", said, re.M)
    if excerpt:  # the line is shown as it stands
        assert excerpt[2] in description.split("\n")[int(excerpt[1]) - 1]
    else:  # none of the lines is wrong, or no line can be told
        assert re.search("holds no fields|lacks|not UTF-8|is not YAML", said)
    assert complaint in re.sub(r"\n +\d+ \|.*", "", said)


def test_a_description_that_is_not_utf_8(tmp_path):
    lay(tmp_path, SOUND)
    (tmp_path / "crew-list" / "target.yaml").write_bytes(b"model: \xff")
    with pytest.raises(UnusableTarget, match="not UTF-8"):
        load([tmp_path])


def test_a_description_with_a_byte_order_mark_and_windows_line_ends(tmp_path):
    lay(tmp_path, SOUND)
    path = tmp_path / "crew-list" / "target.yaml"
    path.write_bytes(b"\xef\xbb\xbf" + SOUND.replace("\n", "\r\n").encode())
    assert load([tmp_path])["crew-list"].description == "A list."


def test_one_that_cannot_be_used_keeps_nobody_from_the_others(tmp_path):
    lay(lay(tmp_path, SOUND), SOUND + "colour: red\n", "boat-list")
    found = shelf([tmp_path], tmp_path.parent)
    assert set(found.targets) == {*load(), "crew-list"}
    fault = found.broken["boat-list"]
    assert fault.place.path == f"{tmp_path.name}/boat-list/target.yaml"
    assert (fault.place.line, fault.place.column, fault.place.end_column) == (5, 1, 7)


def test_a_folder_that_is_none(tmp_path):
    with pytest.raises(UnusableTarget, match="gone: is not a folder of targets"):
        load([tmp_path / "gone"])


def test_a_folder_without_a_description(tmp_path):
    (tmp_path / "empty").mkdir()
    with pytest.raises(UnusableTarget, match=r"empty/target.yaml: cannot be read: No such file"):
        load([tmp_path])
