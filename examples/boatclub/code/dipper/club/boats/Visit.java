package club.boats;

import club.boatlib.Boat;

/** Shows dipper to visitors. All devices come from the start-up class that namegen made. */
final class Visit {
    private Visit() {}

    public static void main(String[] args) {
        DipperStartUp devices = DipperStartUp.start(new Boat("dipper"));
        System.out.println(DipperStartUp.describe());
        devices.mastLamp.shine(true);
        devices.bottleWheel.swing(37);
        devices.bottleWheel.swing(0);
        System.out.println("water " + devices.bilgeLevel.value());
        devices.mastLamp.shine(false);
    }
}
