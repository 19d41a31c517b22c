"""Look for drifting reeds along the far bank."""

from boatlib import Boat, Drive, Sounder
from steering import Helm

FAR_BANK = 310.0


class Patrol:
    """Kingfisher on patrol."""

    def __init__(self, boat: Boat) -> None:
        self.stern_thruster = boat.fitted("sternThruster", Drive)
        self.range = boat.fitted("rangeBow", Sounder)

    def along(self, helm: Helm) -> None:
        """Follow the bank until something lies ahead."""
        self.stern_thruster.push(0.3)
        while self.range.metres() > 0.5:
            helm.hold(FAR_BANK)
        self.stern_thruster.rest()


def main() -> None:
    """Patrol once."""
    boat = Boat("kingfisher")
    Patrol(boat).along(Helm(boat))


if __name__ == "__main__":
    main()
