"""Steering by compass, for the boats that are programmed in Python."""

from boatlib import Bearing, Boat

FURTHEST = 35.0
"""How far the rudder is ever laid over, in degrees."""


class Helm:
    """Keeps a boat on a course."""

    def __init__(self, boat: Boat) -> None:
        self.rudder = boat.servo("rudder")
        self.heading = boat.fitted("heading", Bearing)

    def hold(self, course: float) -> float:
        """Lay the rudder against what the boat is off course; return that in degrees."""
        off = (course - self.heading.degrees() + 180) % 360 - 180
        self.rudder.swing(max(-FURTHEST, min(FURTHEST, off)))
        return off

    def ahead(self) -> None:
        """Put the rudder in the middle."""
        self.rudder.swing(0)
