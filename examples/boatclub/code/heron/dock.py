"""Come back to the jetty, stern first, and open the hold."""

from boatlib import Boat, Bumper, Sensor
from devices import Motor, Servo

SLOW = -0.2
THRUSTER = "frontThruster"


def main() -> None:
    """Go astern until the jetty is touched."""
    boat = Boat("heron")
    bow = boat.motor(THRUSTER)
    stern = boat.motor(Motor.STERN_THRUSTER)
    jetty = boat.fitted("bumpStern", Bumper)

    stern.push(SLOW)
    while not jetty.touched():
        bow.push(0.1)
        boat.pause(0.5)
    bow.rest()
    stern.rest()

    if Sensor(boat, name="bi1geLevel").value() > 6:
        print("pump her out before you leave")
    boat.servo(Servo.HATCH_SERVO).swing(65)


if __name__ == "__main__":
    main()
