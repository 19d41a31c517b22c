"""In the test tank: run a thruster for a quarter of an hour and watch the boards."""

from boatlib import Boat, Sensor

MINUTES = 15


def main() -> None:
    """Push against the tank's wall with the thruster that is asked for."""
    boat = Boat("heron", setup="tank-test")
    warmth = Sensor(boat, "hullTemp")
    winch = boat.motor("netWinch")
    winch.rest()
    side = input("bow or stern? ")
    thruster = boat.motor(side + "Thruster")
    thruster.push(0.3)
    boat.pause(MINUTES * 60)
    thruster.rest()
    print(f"{side}: {warmth.value():g} degrees")


if __name__ == "__main__":
    main()
