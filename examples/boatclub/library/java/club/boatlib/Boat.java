package club.boatlib;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A boat, as a stand-in for the desk: it prints what a boat would do. A name that the selected
 * setup does not have stops the program, as on a boat.
 */
public final class Boat {
    private final String name;
    private final Map<String, String> kinds;

    public Boat(String name) {
        this.name = name;
        this.kinds = Configuration.kinds(name);
    }

    /** Returns the motor of that name. */
    public Drive motor(String device) {
        return fitted(device, Drive.class);
    }

    /** Returns the servo of that name. */
    public Hinge servo(String device) {
        return fitted(device, Hinge.class);
    }

    /** Returns the device of that name as what the program wants to use it for. */
    public <T extends Device> T fitted(String device, Class<T> sort) {
        String kind = kinds.get(device);
        if (kind == null) {
            throw new NotFitted(name + " has no \"" + device + "\"");
        }
        Device made = Device.of(kind, device);
        if (!sort.isInstance(made)) {
            throw new NotFitted(device + " is a " + kind + ", not a " + sort.getSimpleName());
        }
        return sort.cast(made);
    }

    /** Stops at once, naming all of them, when devices are missing. */
    public void expects(String... devices) {
        List<String> missing = new ArrayList<>(Arrays.asList(devices));
        missing.removeAll(kinds.keySet());
        if (!missing.isEmpty()) {
            throw new NotFitted(name + " has no " + String.join(", ", missing));
        }
        System.out.println(name + ": all " + devices.length + " devices are there");
    }

    /** Returns the names of all devices that the selected setup has. */
    public Set<String> names() {
        return Collections.unmodifiableSet(kinds.keySet());
    }

    /** Lets that time pass. */
    public void pause(double seconds) {
        System.out.println(name + ": " + seconds + " s pass");
    }
}
