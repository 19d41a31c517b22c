package club.boatlib;

/** The configuration has no such device, or it is of another kind. */
public final class NotFitted extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotFitted(String message) {
        super(message);
    }
}
