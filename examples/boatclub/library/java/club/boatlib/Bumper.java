package club.boatlib;

/** A switch; the stand-in is touched from the third question on. */
public final class Bumper extends Device {
    private int questions;

    Bumper(String name) {
        super(name);
    }

    /** Whether something pushes against it. */
    public boolean touched() {
        questions++;
        say(questions > 2 ? "touched" : "free");
        return questions > 2;
    }
}
