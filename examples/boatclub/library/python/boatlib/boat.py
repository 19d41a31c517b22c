"""A boat and the devices that its configuration says are fitted."""

import json
from pathlib import Path
from typing import TypeVar

from boatlib.devices import Device, Drive, Hinge

CONFIGURATIONS = Path(__file__).resolve().parents[3] / "config"

AnyDevice = TypeVar("AnyDevice", bound=Device)


class NotFitted(Exception):
    """The selected setup has no such device, or it is of another kind."""


class Boat:
    """The boat a program runs on, in the setup that is selected on it (or the one given)."""

    def __init__(self, name: str, setup: str | None = None) -> None:
        self.name = name
        self.setup, self._kinds = read_configuration(name, setup)
        print(f"{name}: setup {self.setup}")

    def motor(self, name: str) -> Drive:
        """Return the motor of that name."""
        return self.fitted(name, Drive)

    def servo(self, name: str) -> Hinge:
        """Return the servo of that name."""
        return self.fitted(name, Hinge)

    def fitted(self, name: str, sort: type[AnyDevice]) -> AnyDevice:
        """Return the device of that name as what the program wants to use it for."""
        kind = self._kinds.get(name)
        if kind is None:
            raise NotFitted(f"{self.name} has no {name!r} in setup {self.setup}")
        if kind not in sort.kinds:
            raise NotFitted(f"{name!r} on {self.name} is a {kind}, not a {sort.__name__}")
        return sort(name)

    def expects(self, *names: str) -> None:
        """Stop at once, naming all of them, when devices are missing."""
        missing = [name for name in names if name not in self._kinds]
        if missing:
            raise NotFitted(f"{self.name} has no {', '.join(map(repr, missing))}")
        print(f"{self.name}: all {len(names)} devices are there")

    def pause(self, seconds: float) -> None:
        """Let that time pass."""
        print(f"{self.name}: {seconds:g} s pass")


def read_configuration(boat: str, setup: str | None) -> tuple[str, dict[str, str]]:
    """Return the setup's name and the kind of each of its devices, from the built file."""
    text = (CONFIGURATIONS / f"{boat}.json").read_text(encoding="utf-8")
    for entry in json.loads(text)["setups"]:
        if entry["setup"] == setup or (setup is None and entry["selected"]):
            return entry["setup"], {each["name"]: each["kind"] for each in entry["devices"]}
    raise NotFitted(f"{boat} has no setup {setup}")
