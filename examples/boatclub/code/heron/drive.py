"""Heron's hull: both thrusters, the rudder and the bumper at the bow."""

from boatlib import Boat, Bumper
from devices import Motor, Servo, Switch

CRUISE = 0.45


class Hull:
    """Moves heron about. Every name comes from the constants that namegen made."""

    def __init__(self, boat: Boat) -> None:
        self.boat = boat
        self.bow_thruster = boat.motor(Motor.BOW_THRUSTER)
        self.stern_thruster = boat.motor(Motor.STERN_THRUSTER)
        self.rudder = boat.servo(Servo.RUDDER)
        self.bump_bow = boat.fitted(Switch.BUMP_BOW, Bumper)

    def ahead(self, seconds: float) -> bool:
        """Go ahead for a while; return whether the way was free."""
        self.rudder.swing(0)
        if self.bump_bow.touched():
            self.halt()
            return False
        self.stern_thruster.push(CRUISE)
        self.boat.pause(seconds)
        return True

    def sidle(self, share: float, seconds: float) -> None:
        """Push the bow sideways; a negative share goes to the left."""
        self.bow_thruster.push(share)
        self.boat.pause(seconds)
        self.bow_thruster.rest()

    def halt(self) -> None:
        """Let go of both thrusters."""
        self.stern_thruster.rest()
        self.bow_thruster.rest()


def main() -> None:
    """Drive until the bow touches something."""
    hull = Hull(Boat("heron"))
    while hull.ahead(seconds=4):
        hull.sidle(-0.2, seconds=1)


if __name__ == "__main__":
    main()
