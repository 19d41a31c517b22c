"""Show heron to visitors. All devices come from the start-up module that namegen made."""

import sys

from boatlib import Boat
from start_up import describe, start


def main(setup: str | None) -> None:
    """Let each end of the boat do something small."""
    devices = start(Boat("heron", setup))
    print(describe())
    devices.mast_lamp.shine(True)
    devices.rudder.swing(15)
    devices.rudder.swing(0)
    if devices.hatch_servo is not None:
        devices.hatch_servo.swing(40)
    print(f"water {devices.bilge_level.value():g}, course {devices.heading.degrees():g}")
    devices.mast_lamp.shine(False)


if __name__ == "__main__":
    main(sys.argv[1] if len(sys.argv) > 1 else None)
