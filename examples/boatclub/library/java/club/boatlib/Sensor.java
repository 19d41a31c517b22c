package club.boatlib;

/** A reading smoothed over a few questions: {@code new Sensor(boat, "hullTemp")}. */
public final class Sensor {
    private static final int OVER = 3;
    private final Reading reading;

    public Sensor(Boat boat, String name) {
        reading = boat.fitted(name, Reading.class);
    }

    /** Returns the mean of the last readings. */
    public double value() {
        double sum = 0;
        for (int i = 0; i < OVER; i++) {
            sum += reading.value();
        }
        return sum / OVER;
    }
}
