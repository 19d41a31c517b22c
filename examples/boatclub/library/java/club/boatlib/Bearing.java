package club.boatlib;

/** A compass; the stand-in turns by 7 degrees with every question. */
public final class Bearing extends Device {
    private double degrees = 83;

    Bearing(String name) {
        super(name);
    }

    /** Returns where the bow points, clockwise from north. */
    public double degrees() {
        degrees += 7;
        say(degrees + " degrees");
        return degrees;
    }
}
