import java.util.Arrays;
import java.util.List;

/** An invented library: a boat that knows what is fitted to it. */
public final class Boat {
  private final List<String> names;
  private int asked;

  Boat(String... names) {
    this.names = Arrays.asList(names);
  }

  int asked() {
    return asked;
  }

  Drive motor(String name) {
    return fitted(name, Drive.class);
  }

  <T extends Part> T fitted(String name, Class<T> sort) {
    T found = find(name, sort);
    if (found == null) {
      throw new NotFitted();
    }
    return found;
  }

  <T extends Part> T find(String name, Class<T> sort) {
    asked++;
    return names.contains(name) ? sort.cast(Part.make(sort)) : null;
  }

  <T extends Part> T need(String name, Class<T> sort) throws Gone {
    T found = find(name, sort);
    if (found == null) {
      throw new Gone();
    }
    return found;
  }

  /** Anything fitted to the boat. */
  static class Part {
    static Part make(Class<?> sort) {
      return sort == Drive.class ? new Drive() : sort == Hinge.class ? new Hinge() : new Part();
    }
  }

  /** A motor. */
  static class Drive extends Part {}

  /** A servo. */
  static class Hinge extends Part {}

  /** There is no such device, which every caller has to deal with. */
  static class Gone extends Exception {
    private static final long serialVersionUID = 1L;
  }

  /** There is no such device. */
  static class NotFitted extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }
}
