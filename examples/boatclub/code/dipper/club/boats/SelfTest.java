package club.boats;

import club.boatlib.Beacon;
import club.boatlib.Bearing;
import club.boatlib.Boat;
import club.boatlib.Sensor;

/** What dipper asks herself before every trip. */
final class SelfTest {
    private SelfTest() {}

    static void run(Boat boat) {
        checkAllThere(boat);
        Beacon lamp = boat.fitted(DipperDevices.Lamp.MAST_LAMP, Beacon.class);
        lamp.shine(true);
        boat.fitted(DipperDevices.Imu.HEADING, Bearing.class).degrees();
        Sensor water = new Sensor(boat, DipperDevices.Level.BILGE_LEVEL);
        Sensor warmth = new Sensor(boat, DipperDevices.Temperature.HULL_TEMP);
        System.out.println("water " + water.value() + ", boards " + warmth.value());
        lamp.shine(false);
    }

    /** Says of each missing device where it belongs, from the table that namegen made. */
    private static void checkAllThere(Boat boat) {
        for (DipperDevices.Row row : DipperDevices.DEVICES) {
            if (!row.optional && !boat.names().contains(row.name)) {
                System.out.println("missing: " + row.name + ", belongs on " + row.port);
            }
        }
    }
}
