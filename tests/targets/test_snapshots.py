"""The outputs of one fixed robot, letter for letter, so that a change is seen and meant."""

from __future__ import annotations

import pytest

from namegen.targets.shelf import load
from targets.standins import OPTIONS


@pytest.mark.parametrize("target", sorted(name for name in load()))
def test_heron(make, snapshot, target):
    text = make(target, path="out/HeronDevices.txt", **OPTIONS.get(target, {}))
    assert text == snapshot
    assert text == make(target, path="out/HeronDevices.txt", **OPTIONS.get(target, {}))
    assert text.endswith("\n") and not text.endswith("\n\n")
    assert "\r" not in text
    assert not any(line != line.rstrip() for line in text.splitlines())
