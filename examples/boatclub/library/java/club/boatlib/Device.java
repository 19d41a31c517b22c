package club.boatlib;

/** Any device: it knows its name and says what it does. */
public abstract class Device {
    private final String name;

    Device(String name) {
        this.name = name;
    }

    static Device of(String kind, String name) {
        switch (kind) {
            case "motor":
                return new Drive(name);
            case "servo":
                return new Hinge(name);
            case "switch":
                return new Bumper(name);
            case "lamp":
                return new Beacon(name);
            case "imu":
                return new Bearing(name);
            default:
                return new Reading(name);
        }
    }

    final void say(String what) {
        System.out.println("  " + name + ": " + what);
    }
}
