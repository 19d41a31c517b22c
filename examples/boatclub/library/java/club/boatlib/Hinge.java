package club.boatlib;

/** A servo. */
public final class Hinge extends Device {
    Hinge(String name) {
        super(name);
    }

    /** Goes to an angle from the middle, in degrees. */
    public void swing(double degrees) {
        say("swings to " + degrees + " degrees");
    }
}
