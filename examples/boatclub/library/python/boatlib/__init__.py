"""The boat library, as a stand-in for the desk: it says what a boat would do.

On a boat the same calls move things. Here they print, and sensors answer with
made-up readings that let every program come to its end. As on a boat, a name
that the selected setup does not have stops the program.
"""

from boatlib.boat import Boat, NotFitted
from boatlib.devices import Beacon, Bearing, Bumper, Drive, Hinge, Sensor, Sounder

__all__ = [
    "Beacon",
    "Bearing",
    "Boat",
    "Bumper",
    "Drive",
    "Hinge",
    "NotFitted",
    "Sensor",
    "Sounder",
]
