"""The guide for authors of targets names every field of the template data, and no other."""

from __future__ import annotations

import re

import pytest
import yaml

from namegen.targets.guide import GUIDE, describe, describe_one
from namegen.targets.shelf import load
from namegen.targets.template_model import CLASSES, VERSION, readable

HEADINGS = {"PortGroup": "group", "BuiltIn": "built_in"}


@pytest.mark.parametrize("data", CLASSES, ids=lambda data: data.__name__)
def test_the_guide_names_every_field(data: type):
    heading = HEADINGS.get(data.__name__, data.__name__.lower())
    (block,) = re.findall(rf"^{heading}\n((?:  .*\n)+)", GUIDE, re.M)
    named = set()
    for line in block.splitlines():
        if not line.startswith("   "):
            words = re.match(r"  ((?:\w+\*?, )*\w+\*?)(?:$|,$|  )", line)
            assert words, line
            named |= {word.rstrip("*") for word in words[1].split(", ")}
    assert named == set(readable(data))


def test_the_guide_says_the_version():
    assert f"model        {VERSION}," in GUIDE


def test_the_description_shows_every_target_and_escape():
    targets = load()
    text = describe(targets)
    for target in targets.values():
        assert f"\n  {target.name} " in text
        for escape in target.escapes:
            assert re.search(rf"^  {escape} +\w", text, re.M), escape
    assert max(map(len, text.splitlines())) <= 100


@pytest.mark.parametrize("target", load().values(), ids=lambda target: target.name)
def test_one_target_is_told_with_its_options_and_an_entry_that_yaml_reads(target):
    text = describe_one(target)
    head, _, rest = text.partition("under `build`:\n")
    assert " ".join(target.description.split()) in " ".join(head.split())
    (entry,) = yaml.safe_load(rest.partition("\n\n")[0])
    needed = {name for name, option in target.options.items() if option.default is None}
    assert entry["target"] == target.name and set(entry.get("with", ())) == needed
    assert ("{robot}" in entry["to"] or "{Robot}" in entry["to"]) == (target.per == "robot")
    for option in target.options.values():
        assert f"\n  {option.name} ({option.type}, " in rest
        for sample in re.findall(r"`[^`]*`", option.help):
            assert sample in rest, "a sample is broken over two lines"
