"""In the test tank: run each thruster for a quarter of an hour and watch the boards."""

from boatlib import Boat, Sensor

MINUTES = 15


def main() -> None:
    """Push against the tank's wall with one thruster, then with the other."""
    boat = Boat("heron", setup="tank-test")
    warmth = Sensor(boat, "hullTemp")
    for thruster in (boat.motor("bowThruster"), boat.motor("sternThruster")):
        thruster.push(0.3)
        boat.pause(MINUTES * 60)
        thruster.rest()
        print(f"{thruster.name}: {warmth.value():g} degrees")


if __name__ == "__main__":
    main()
