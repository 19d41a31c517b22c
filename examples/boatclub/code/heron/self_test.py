"""Before every trip: is all there, and does each thing do what the sheet says."""

from boatlib import Beacon, Bearing, Boat, Bumper, Sensor, Sounder
from devices import Distance, Imu, Lamp, Level, Motor, Servo, Switch, Temperature


def main() -> None:
    """Move and read every device once."""
    boat = Boat("heron")
    boat.expects("mastLamp", "netWinch", "bumpBow", "bumpStern", "rangeBow", "rudder")
    test_moving(boat)
    test_feeling(boat)


def test_moving(boat: Boat) -> None:
    """Run the motors and servos for a moment each."""
    lamp = boat.fitted(Lamp.MAST_LAMP, Beacon)
    lamp.shine(True)
    bow_thruster = boat.motor(Motor.BOW_THRUSTER)
    stern_thruster = boat.motor(Motor.STERN_THRUSTER)
    net_winch = boat.motor(Motor.NET_WINCH)
    for motor in (bow_thruster, stern_thruster, net_winch):
        motor.push(0.15)
        boat.pause(0.5)
        motor.rest()
    rudder = boat.servo(Servo.RUDDER)
    hatch = boat.servo(Servo.HATCH_SERVO)
    for servo in (rudder, hatch):
        servo.swing(20)
        servo.swing(0)
    lamp.shine(False)


def test_feeling(boat: Boat) -> None:
    """Ask every sensor once."""
    boat.fitted(Switch.BUMP_BOW, Bumper).touched()
    boat.fitted(Switch.BUMP_STERN, Bumper).touched()
    boat.fitted(Distance.RANGE_BOW, Sounder).metres()
    boat.fitted(Imu.HEADING, Bearing).degrees()
    Sensor(boat, Level.BILGE_LEVEL).value()
    Sensor(boat, name=Temperature.HULL_TEMP).value()


if __name__ == "__main__":
    main()
