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


def is_word(text: str) -> bool:
    """Whether a text in lower case is an English word or a word of the trade.

    >>> is_word("lift"), is_word("lfit"), is_word("servo")
    (True, False, True)
    """
    return text in _words()


@cache
def _words() -> frozenset[str]:
    """Return the words of the data file beside this module and those of the trade."""
    data = Path(__file__).with_name("english.txt").read_text(encoding="ascii")
    words = (line for line in data.splitlines() if not line.startswith("#"))
    return frozenset(words).union(_TRADE.split())
