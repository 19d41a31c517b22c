"""An invented library: a boat that knows what is fitted to it."""

from __future__ import annotations

from typing import TypeVar


class NotFitted(Exception):
    """There is no such device."""


class Part:
    """Anything fitted to the boat."""

    def __init__(self, name: str) -> None:
        self.name = name


class Drive(Part):
    """A motor."""


class Hinge(Part):
    """A servo."""


AnyPart = TypeVar("AnyPart", bound=Part)


class Boat:
    """A boat with these devices; ``asked`` are the names that were looked up."""

    def __init__(self, *fitted: str) -> None:
        self.names = fitted
        self.asked: list[str] = []

    def motor(self, name: str) -> Drive:
        """Return a motor."""
        return self.fitted(name, Drive)

    def fitted(self, name: str, sort: type[AnyPart]) -> AnyPart:
        """Return a device, or raise NotFitted."""
        found = self.find(name, sort)
        if found is None:
            raise NotFitted(name)
        return found

    def find(self, name: str, sort: type[AnyPart]) -> AnyPart | None:
        """Return a device, or None."""
        self.asked.append(name)
        return sort(name) if name in self.names else None
