package club.boatlib;

/** A lamp. */
public final class Beacon extends Device {
    Beacon(String name) {
        super(name);
    }

    /** Switches it on or off. */
    public void shine(boolean on) {
        say(on ? "shines" : "is dark");
    }
}
