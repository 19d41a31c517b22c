"""What every trip looks at: water in the bilge and warm boards."""

from boatlib import Boat, Sensor

HIGHEST_WATER = 18.0
WARMEST = 61.0


class Watch:
    """Says when it is time to come home."""

    def __init__(self, boat: Boat) -> None:
        self.water = Sensor(boat, "bilgeLevel")
        self.warmth = Sensor(boat, name="HullTemp", over=5)

    def all_well(self) -> bool:
        """Whether the boat may stay out."""
        return self.water.value() < HIGHEST_WATER and self.warmth.value() < WARMEST
