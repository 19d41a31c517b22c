"""What a program can do with a device, by what the device is used for."""

from typing import ClassVar, Protocol


class Fitting(Protocol):
    """The one thing a `Sensor` needs of a boat."""

    def fitted(self, name: str, sort: type["Reading"]) -> "Reading":
        """Return the device of that name."""


class Device:
    """Any device: it knows its name and says what it does."""

    kinds: ClassVar[tuple[str, ...]] = ()

    def __init__(self, name: str) -> None:
        self.name = name

    def say(self, what: str) -> None:
        """Print what a boat would do."""
        print(f"  {self.name}: {what}")


class Drive(Device):
    """A motor."""

    kinds = ("motor",)

    def push(self, share: float) -> None:
        """Run at a share of full strength, -1 to 1."""
        self.say(f"runs at {share:+.0%}")

    def rest(self) -> None:
        """Let go."""
        self.say("rests")


class Hinge(Device):
    """A servo."""

    kinds = ("servo",)

    def swing(self, degrees: float) -> None:
        """Go to an angle from the middle, in degrees."""
        self.say(f"swings to {degrees:+g} degrees")


class Bumper(Device):
    """A switch; the stand-in is touched from the third question on."""

    kinds = ("switch",)

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self._questions = 0

    def touched(self) -> bool:
        """Whether something pushes against it."""
        self._questions += 1
        self.say("touched" if self._questions > 2 else "free")
        return self._questions > 2


class Beacon(Device):
    """A lamp."""

    kinds = ("lamp",)

    def shine(self, on: bool) -> None:
        """Switch it on or off."""
        self.say("shines" if on else "is dark")


class Bearing(Device):
    """A compass; the stand-in turns by 7 degrees with every question."""

    kinds = ("imu",)

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self._degrees = 83.0

    def degrees(self) -> float:
        """Return where the bow points, clockwise from north."""
        self._degrees += 7
        self.say(f"{self._degrees:g} degrees")
        return self._degrees


class Sounder(Device):
    """A distance sensor; what the stand-in sees comes nearer with every question."""

    kinds = ("distance",)

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self._metres = 2.6

    def metres(self) -> float:
        """Return the distance to what lies ahead."""
        self._metres -= 0.7
        self.say(f"{self._metres:.1f} m ahead")
        return self._metres


class Reading(Device):
    """A sensor that gives one number."""

    kinds = ("level", "temperature")

    def value(self) -> float:
        """Return the number, in the unit on the part's label."""
        self.say("reads 4.2")
        return 4.2


class Sensor:
    """A reading smoothed over a few questions: ``Sensor(boat, "hullTemp")``."""

    def __init__(self, boat: Fitting, name: str, over: int = 3) -> None:
        self._reading = boat.fitted(name, Reading)
        self._over = over

    def value(self) -> float:
        """Return the mean of the last readings."""
        return sum(self._reading.value() for _ in range(self._over)) / self._over
