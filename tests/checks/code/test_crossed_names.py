"""A crossed name has a second sign; a word that happens to be a device's name as well has none."""

from __future__ import annotations

import pytest

from namegen.checks.code import crossed_names
from namegen.model.findings import Finding
from namegen.model.views import CodeView
from tests.checks.code.boats import device, lookups, manifest

ROBOT = manifest(
    "heron",
    [
        device("winch", "motor", "bridge motor 1"),
        device("netWinch", "motor", "bridge motor 2"),
        device("sternThruster", "motor", "bridge motor 3"),
        device("bowThruster", "motor", "bridge motor 4"),
        device("x", "motor", "bridge motor 5"),
        device("reel", "motor", "stern motor 1"),
    ],
)
IN_TWO = "def a():\n    {}\n\ndef b():\n    {}"


def crossed(code: str, robot=ROBOT) -> list[Finding]:
    """Return what is crossed in a piece of code."""
    return list(crossed_names.check(CodeView(robot, None, lookups(code), frozenset(), True)))


def told(code: str) -> list[tuple[int, str | None, str | None]]:
    """Return line, found and expected text of what is crossed."""
    return [(one.place.line, one.found, one.expected) for one in crossed(code)]


@pytest.mark.parametrize(
    "code",
    [
        'winch = boat.motor("netWinch")',  # as in `path = environ.get("PATH_INFO")`
        'winch = boat.motor("winch")',
        'winch = boat.motor("sternThruster")',  # as in `path = environ.get("XDG_DATA_HOME")`
        'net_winch = boat.motor("winch")',  # as in `module_name = getattr(f, "__module__")`
        'net_winch = boat.motor("sternThruster")',  # as in `os_name = get("DISTRIB_ID")`
        'x = boat.motor("reel")\nreel = boat.motor("reel")',  # one letter names nothing
        # What the first look-up did not give is taken from elsewhere.
        'winch = boat.motor("winch")\nwinch = boat.motor("reel")\nreel = boat.motor("reel")',
        # In another function, a longer name may say more of the same thing.
        IN_TWO.format('net_winch = boat.motor("winch")', 'winch = boat.motor("winch")'),
        # The other look-ups here are not named for their devices, or are too few.
        'reel = boat.motor("sternThruster")\nwinch = boat.motor("winch")',
        (
            'reel = boat.motor("sternThruster")\nwinch = boat.motor("winch")\n'
            'net_winch = boat.motor("netWinch")\npusher = boat.motor("bowThruster")'
        ),
        'net_winch = boat.motor("sternThruster")\npusher = boat.motor("bowThruster")',
    ],
)
def test_without_a_second_sign_nothing_is_crossed(code: str):
    assert told(code) == []


@pytest.mark.parametrize(
    ("code", "where"),
    [
        # Copied: the device that it gets fills its own variable too.
        ('reel = boat.motor("reel")\nwinch = boat.motor("reel")', [(2, "reel", "winch")]),
        (
            IN_TWO.format('reel = boat.motor("reel")', 'self.winch = boat.motor("reel")'),
            [(5, "reel", "winch")],
        ),
        (
            'net_winch = boat.motor("winch")\nwinch = boat.motor("winch")',
            [(1, "winch", "netWinch")],
        ),
        # Swapped: each has the other's.
        (
            'reel = boat.motor("winch")\nWINCH = boat.motor("reel")',
            [(1, "winch", "reel"), (2, "reel", "winch")],
        ),
        # Like each other, word by word.
        ('m_bowThruster = boat.motor("sternThruster")', [(1, "sternThruster", "bowThruster")]),
        # Among variables that are named for their devices.
        (
            'reel = boat.motor("sternThruster")\nwinch = boat.motor("winch")\n'
            'net_winch = boat.motor("netWinch")',
            [(1, "sternThruster", "reel")],
        ),
        (
            'net_winch = boat.motor("sternThruster")\nreel = boat.motor("reel")',
            [(1, "sternThruster", "netWinch")],
        ),
    ],
)
def test_a_second_sign_makes_it_crossed(code: str, where: list[tuple[int, str, str]]):
    assert told(code) == where


TRACKS = [device(name, "motor") for name in ("leftTrack", "rightTrack", "left", "bowLeftFan")]


@pytest.mark.parametrize(
    ("code", "expected"),
    [
        ('port = boat.motor("rightTrack")', []),  # no portTrack
        ('left_drive = boat.motor("rightTrack")', ["leftTrack"]),
        ('self.right = boat.motor("leftTrack")', ["rightTrack"]),
        ('m_leftMotor = boat.motor("rightTrack")', ["leftTrack"]),
        ('right = boat.motor("rightTrack")', []),
        ('right = boat.motor("left")', []),  # a word alone is too common
        ('left_of_right = boat.motor("rightTrack")', []),
        ('stern_left = boat.motor("bowLeftFan")', []),  # no sternLeftFan
        ('left_arm = boat.servo("rightTrack")', []),  # another kind: `wrong-kind` says that
    ],
)
def test_a_holder_with_the_opposite_word_means_the_counterpart(code: str, expected: list[str]):
    found = crossed(code, manifest("heron", TRACKS))
    assert [one.expected for one in found] == expected


def test_the_other_line_of_a_copy_is_shown():
    (finding,) = crossed('reel = boat.motor("reel")\nwinch = boat.motor("reel")')
    own = finding.related[0]
    assert (own.place.line, own.message) == (1, "it fills the variable of its own name here")
    first, _ = crossed('reel = boat.motor("winch")\nwinch = boat.motor("reel")')
    assert first.related[0].place.line == 2


def test_a_device_of_another_kind_is_no_sign():
    robot = manifest("heron", [device("reel", "motor"), device("winch", "servo")])
    assert crossed('reel = boat.motor("reel")\nwinch = boat.motor("reel")', robot) == []
