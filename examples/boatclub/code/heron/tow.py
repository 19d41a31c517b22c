"""Tow another boat home. Begun from kingfisher's reed program, not finished yet."""

from boatlib import Beacon, Boat


def main() -> None:
    """Haul the line tight, then go slowly."""
    boat = Boat("heron")
    line = boat.motor("reedCutter")
    hatch = boat.motor("hatchServo")
    warning = boat.fitted("fogHorn", Beacon)
    stern = boat.motor("sternThruster")

    hatch.push(0.5)
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
