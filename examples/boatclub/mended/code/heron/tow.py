"""Tow another boat home."""

from boatlib import Beacon, Boat


def main() -> None:
    """Haul the line tight, then go slowly."""
    boat = Boat("heron")
    line = boat.motor("netWinch")
    hatch = boat.servo("hatchServo")
    warning = boat.fitted("mastLamp", Beacon)
    stern = boat.motor("sternThruster")

    hatch.swing(40)
    warning.shine(True)
    line.push(0.35)
    boat.pause(3)
    line.rest()
    stern.push(0.25)
    boat.pause(20)
    stern.rest()
    warning.shine(False)


if __name__ == "__main__":
    main()
