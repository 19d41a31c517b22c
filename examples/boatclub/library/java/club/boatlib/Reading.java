package club.boatlib;

/** A sensor that gives one number. */
public final class Reading extends Device {
    Reading(String name) {
        super(name);
    }

    /** Returns the number, in the unit on the part's label. */
    public double value() {
        say("reads 4.2");
        return 4.2;
    }
}
