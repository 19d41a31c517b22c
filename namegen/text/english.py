"""Whether a piece of a name is a real word, and so hardly a slip of another.

``liftMotor`` is one letter away from ``leftMotor``, and another machine. The
list is SCOWL's of common words (size 35), 3 and more letters; ``english.txt`` says
where it comes from and on which terms. Words of the trade are added here.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

_TRADE = """
accelerometer actuator analog barometer bumper buzzer chassis decoder detector dispenser
drivetrain encoder flywheel gearbox gimbal gyro gyroscope hopper intake lidar linkage magnet
odometer odometry outtake pinion pivot potentiometer proximity relay roller rotor servo slider
solenoid sonar spindle sprocket telemetry thermistor thruster turret ultrasonic winch
"""
"""Common practice in naming devices, no source."""
_ENDINGS = (
    *("s", "es", "d", "ed", "r", "rs", "er", "ers", "or", "ors", "ing", "ings", "ion", "ions"),
    *("ment", "ments", "able", "ability", "ness", "ly", "ive"),
)
_BEFORE = (
    *("un", "re", "pre", "dis", "non", "de", "mis", "over", "under", "out", "in", "sub"),
    *("auto", "up", "down", "multi", "anti"),
)
"""Endings and syllables that make another word of one. Common practice, no source."""


def is_word(text: str) -> bool:
    """Whether a text in lower case is an English word or a word of the trade.

    >>> is_word("lift"), is_word("lfit"), is_word("servo")
    (True, False, True)
    """
    return text in _words()


def is_formed(text: str) -> bool:
    """Whether a text in lower case is a word, or one with an ending or syllable put to it.

    The ending may have taken an ``e``, made an ``i`` of a ``y``, or doubled a letter.

    >>> is_formed("retrying"), is_formed("unlink"), is_formed("renaming"), is_formed("motpr")
    (True, True, True, False)
    """
    if is_word(text):
        return True
    if any(is_word(text[len(one) :]) for one in _BEFORE if text.startswith(one)):
        return True
    return any(_ends(text[: -len(one)], one) for one in _ENDINGS if text.endswith(one))


def _ends(stem: str, ending: str) -> bool:
    """Whether a word with this ending becomes the stem."""
    whole = [stem, stem[:-1] + "y"] if stem.endswith("i") else [stem]
    if ending[0] in "aeio":
        whole += [stem + "e", stem[:-1]] if stem[-1:] == stem[-2:-1] else [stem + "e"]
    return any(map(is_word, whole))


@cache
def _words() -> frozenset[str]:
    """Return the words of the data file beside this module and those of the trade."""
    data = Path(__file__).with_name("english.txt").read_text(encoding="ascii")
    words = (line for line in data.splitlines() if not line.startswith("#"))
    return frozenset(words).union(_TRADE.split())
