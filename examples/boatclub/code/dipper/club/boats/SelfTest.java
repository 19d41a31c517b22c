package club.boats;

import club.boatlib.Beacon;
import club.boatlib.Bearing;
import club.boatlib.Boat;
import club.boatlib.Sensor;

/** What dipper asks herself before every trip. */
final class SelfTest {
    private SelfTest() {}

    static void run(Boat boat) {
        boat.expects(
                DipperDevices.Motor.SAMPLE_PUMP,
                DipperDevices.Servo.BOTTLE_WHEEL,
                DipperDevices.Switch.BUMP_BOW);
        Beacon lamp = boat.fitted(DipperDevices.Lamp.MAST_LAMP, Beacon.class);
        lamp.shine(true);
        boat.fitted(DipperDevices.Imu.HEADING, Bearing.class).degrees();
        Sensor water = new Sensor(boat, DipperDevices.Level.BILGE_LEVEL);
        Sensor warmth = new Sensor(boat, DipperDevices.Temperature.HULL_TEMP);
        System.out.println("water " + water.value() + ", boards " + warmth.value());
        lamp.shine(false);
    }
}
