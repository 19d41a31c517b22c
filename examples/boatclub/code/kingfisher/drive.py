"""Kingfisher's hull, and a short trip to try it."""

from boatlib import Boat
from devices import Distance, Imu, Motor, Servo, Switch


class Hull:
    """Moves kingfisher about. Every name comes from the constants that namegen made."""

    def __init__(self, boat: Boat) -> None:
        boat.expects(
            Motor.REED_CUTTER, Servo.CUTTER_LIFT, Switch.BUMP_BOW, Distance.RANGE_BOW, Imu.HEADING
        )
        self.boat = boat
        self.bow_thruster = boat.motor(Motor.BOW_THRUSTER)
        self.stern_thruster = boat.motor(Motor.STERN_THRUSTER)

    def ahead(self, seconds: float) -> None:
        """Go ahead for a while."""
        self.stern_thruster.push(0.5)
        self.boat.pause(seconds)
        self.stern_thruster.rest()

    def sidle(self, share: float) -> None:
        """Push the bow sideways for a moment."""
        self.bow_thruster.push(share)
        self.boat.pause(1)
        self.bow_thruster.rest()


def main() -> None:
    """Go out and turn once."""
    hull = Hull(Boat("kingfisher"))
    hull.ahead(8)
    hull.sidle(0.4)


if __name__ == "__main__":
    main()
