"""The guide for authors of targets names every field of the template data, and no other."""

from __future__ import annotations

import re

import pytest

from namegen.targets.guide import GUIDE, describe
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


def test_the_description_shows_every_target_option_and_escape():
    targets = load()
    text = describe(targets)
    for target in targets.values():
        assert f"  {target.name} (" in text
        for option in target.options:
            assert f"with {option} (" in text
        for escape in target.escapes:
            assert re.search(rf"^  {escape} +\w", text, re.M), escape
