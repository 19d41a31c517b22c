"""Cut a lane into the reeds."""

from boatlib import Boat, Bumper
from devices import Motor
from drive import Hull
from steering import Helm
from watch import Watch

LANE = 135.0


class Bar:
    """The cutting bar."""

    def __init__(self, boat: Boat) -> None:
        self.motor = boat.motor(Motor.REED_CUTTER)
        self.lift = boat.servo("cuttrLift")

    def lower(self) -> None:
        """Start the bar, then let it down."""
        self.motor.push(0.8)
        self.lift.swing(-50)

    def raise_out(self) -> None:
        """Lift the bar, then let it run down."""
        self.lift.swing(50)
        self.motor.rest()


def main() -> None:
    """Cut until the bow touches the bank."""
    boat = Boat("kingfisher")
    bar, hull, helm, watch = Bar(boat), Hull(boat), Helm(boat), Watch(boat)
    bank = boat.fitted("bumpBow", Bumper)
    bar.lower()
    while watch.all_well() and not bank.touched():
        helm.hold(LANE)
        hull.ahead(2)
    bar.raise_out()


if __name__ == "__main__":
    main()
