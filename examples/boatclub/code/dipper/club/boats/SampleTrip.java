package club.boats;

import club.boatlib.Boat;
import club.boatlib.Bumper;
import club.boatlib.Drive;
import club.boatlib.Hinge;

/** Takes one bottle of water at each of three places. */
public final class SampleTrip {
    private static final int PLACES = 3;
    private static final double ONE_BOTTLE = 37;

    private final Boat boat;
    private final Drive sternThruster;
    private final Drive bowThruster;
    private final Drive samplePump;
    private final Hinge bottleWheel;
    private final Hinge rudder;
    private final Bumper bumpBow;

    SampleTrip(Boat boat) {
        this.boat = boat;
        sternThruster = boat.motor(DipperDevices.Motor.STERN_THRUSTER);
        bowThruster = boat.motor(DipperDevices.Motor.BOW_THRUSTER);
        samplePump = boat.motor(DipperDevices.Motor.SAMPLE_PUMP);
        bottleWheel = boat.servo(DipperDevices.Servo.BOTTLE_WHEEL);
        rudder = boat.servo(DipperDevices.Servo.RUDDER);
        bumpBow = boat.fitted(DipperDevices.Switch.BUMP_BOW, Bumper.class);
    }

    public static void main(String[] args) {
        Boat boat = new Boat("dipper");
        SelfTest.run(boat);
        SampleTrip trip = new SampleTrip(boat);
        for (int bottle = 1; bottle <= PLACES; bottle++) {
            trip.goOn();
            trip.fill(bottle);
        }
    }

    private void goOn() {
        rudder.swing(0);
        if (bumpBow.touched()) {
            bowThruster.push(-0.3);
            boat.pause(1.5);
            bowThruster.rest();
        }
        sternThruster.push(0.35);
        boat.pause(9);
        sternThruster.rest();
    }

    private void fill(int bottle) {
        bottleWheel.swing(bottle * ONE_BOTTLE - 73);
        samplePump.push(0.9);
        boat.pause(5);
        samplePump.rest();
    }
}
