"""A variable that is merely short for what it is filled with bears no other device's name."""

from __future__ import annotations

import pytest

from namegen.checks.code import crossed_names
from namegen.model.views import CodeView
from tests.checks.code.boats import device, lookups, manifest

ROBOT = manifest(
    "heron",
    [
        device("winch", "motor", "bridge motor 1"),
        device("netWinch", "motor", "bridge motor 2"),
        device("sternThruster", "motor", "bridge motor 3"),
    ],
)


@pytest.mark.parametrize(
    ("code", "crossed"),
    [
        ('winch = boat.motor("netWinch")', False),  # as in `path = environ.get("PATH_INFO")`
        ('net_winch = boat.motor("winch")', True),
        ('winch = boat.motor("sternThruster")', True),
        ('winch = boat.motor("winch")', False),
    ],
)
def test_a_holder_that_is_part_of_the_name_is_no_other_devices(code: str, crossed: bool):
    view = CodeView(ROBOT, None, lookups(code), frozenset(), True)
    assert bool(list(crossed_names.check(view))) == crossed
