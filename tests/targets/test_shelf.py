"""Targets are found in the bundled folder and the workspace's own, and described well."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.bundled import bundled
from namegen.errors import UnusableTarget
from namegen.targets.schemes import naming_schemes
from namegen.targets.shelf import load

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
        ("", "holds no fields"),
        ("model: 1\nper: [", "crew-list/target.yaml:3: is not YAML"),
        ("model: 1\n", "lacks description, per, template"),
        (SOUND + "colour: red\n", "unknown field: colour"),
        (SOUND.replace("1", "7"), "model is 7, this namegen offers 1"),
        (SOUND.replace("robot", "boat"), "per is neither robot nor workspace"),
        (SOUND.replace("list.j2", "gone.j2"), "there is no file gone.j2"),
        (SOUND.replace("list.j2", "../x.j2"), "there is no file ../x.j2"),
        (SOUND + "language: cobol\n", "language is none of cpp, java, kotlin, python"),
        (SOUND + "escapes: json_value\n", "escapes is not a list"),
        (SOUND + "options: [a]\n", "options is not a mapping"),
        (SOUND + "options: {a: text}\n", "option a: has fields other than"),
        (SOUND + "options: {a: {type: text}}\n", "needs a help text"),
        (SOUND + "options: {a: {type: float, help: x}}\n", "a type of text, boolean, number"),
        (SOUND + "options: {a: {type: texts, help: x, default: [1]}}\n", "default is not a texts"),
        (SOUND + "fields: []\n", "fields is not a list of words, or there is no language"),
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
    assert complaint in str(caught.value)
    assert str(caught.value).startswith("crew-list/target.yaml")


def test_a_description_that_is_not_utf_8(tmp_path):
    lay(tmp_path, SOUND)
    (tmp_path / "crew-list" / "target.yaml").write_bytes(b"model: \xff")
    with pytest.raises(UnusableTarget, match="not UTF-8"):
        load([tmp_path])


def test_a_folder_that_is_none(tmp_path):
    with pytest.raises(UnusableTarget, match="gone: is not a folder of targets"):
        load([tmp_path / "gone"])


def test_a_folder_without_a_description(tmp_path):
    (tmp_path / "empty").mkdir()
    with pytest.raises(UnusableTarget, match=r"empty/target.yaml: cannot be read: No such file"):
        load([tmp_path])
