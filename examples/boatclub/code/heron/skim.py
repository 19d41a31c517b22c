"""Skim the pond: net out, along the bank, net in."""

from boatlib import Boat, Sounder
from steering import Helm
from watch import Watch

LEGS = (90.0, 180.0, 270.0)
NEAREST = 0.8
WINCH = "netWinch "


class Skimmer:
    """Heron with her net."""

    def __init__(self, boat: Boat) -> None:
        self.boat = boat
        self.bow = boat.motor("bowthruster")
        self.stern = boat.motor("sternThruster")
        self.range = boat.fitted("rangeBow", Sounder)
        self.winch = boat.motor(WINCH)

    def centre_rudder(self) -> None:
        """Start with the rudder in the middle."""
        self.boat.servo("rduder").swing(0)

    def leg(self, helm: Helm, course: float) -> None:
        """Follow one side of the pond until the bank is near."""
        self.stern.push(0.4)
        while self.range.metres() > NEAREST:
            helm.hold(course)
        self.stern.rest()
        self.bow.push(0.3)
        self.boat.pause(2)
        self.bow.rest()

    def net(self, share: float) -> None:
        """Run the winch; a negative share lets the net out."""
        self.winch.push(share)
        self.boat.pause(6)
        self.winch.rest()


def main() -> None:
    """Skim while all is well."""
    boat = Boat("heron")
    skimmer, helm, watch = Skimmer(boat), Helm(boat), Watch(boat)
    skimmer.centre_rudder()
    skimmer.net(-0.5)
    for course in LEGS:
        if not watch.all_well():
            break
        skimmer.leg(helm, course)
    skimmer.net(0.7)


if __name__ == "__main__":
    main()
