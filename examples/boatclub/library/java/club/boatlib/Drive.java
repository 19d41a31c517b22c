package club.boatlib;

/** A motor. */
public final class Drive extends Device {
    Drive(String name) {
        super(name);
    }

    /** Runs at a share of full strength, -1 to 1. */
    public void push(double share) {
        say("runs at " + Math.round(share * 100) + " %");
    }

    /** Lets go. */
    public void rest() {
        say("rests");
    }
}
