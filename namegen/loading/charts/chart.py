"""What a chart says: robots with their devices, and every row that could not be placed."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct, field

from namegen.loading.charts.tables import place_of
from namegen.model.manifests import Device, Port, Setup


class Placed(Struct, frozen=True):
    """A device that a row describes; ``remarks`` are cells that no field of it holds.

    ``odd`` are cells of a field that say nothing it could hold, ``Reversed: perhaps``.
    """

    device: Device
    line: int
    remarks: tuple[str, ...] = ()
    odd: tuple[str, ...] = ()
    sheet: str = ""

    @property
    def place(self) -> str:
        """Where the row stands, in words."""
        return place_of(self.line, self.sheet)


class Misfit(Struct, frozen=True):
    """A row that became no device: what stands there, why, and what to write."""

    line: int
    text: str
    why: str
    remedy: str
    sheet: str = ""

    @property
    def place(self) -> str:
        """Where the row stands, in words."""
        return place_of(self.line, self.sheet)


class Aside(Struct, frozen=True):
    """A row that describes no device: what stands there, and what it was taken for."""

    place: str
    text: str
    why: str


class ChartRobot(Struct, frozen=True):
    """One robot of a chart. ``name`` fits a file's name, ``title`` is what the chart wrote.

    ``free`` are ports of which the chart says that nothing is plugged in there.
    """

    name: str
    placed: tuple[Placed, ...]
    misfits: tuple[Misfit, ...] = ()
    title: str = ""
    setups: Mapping[str, Setup] = field(default_factory=dict)
    selected: str | None = None
    free: tuple[Port, ...] = ()


class UnsureKind(Struct, frozen=True):
    """A word in the column of kinds that may mean several kinds, or none that is known.

    ``likely`` is the kind that the ports of these devices speak for, or None;
    ``places`` are the rows, in words.
    """

    word: str
    places: tuple[str, ...]
    likely: str | None


class Chart(Struct, frozen=True):
    """All that was read. ``readings`` says which words were taken for which kind."""

    robots: tuple[ChartRobot, ...]
    above: tuple[str, ...] = ()
    """What stands above the row of headings."""
    readings: Mapping[str, str] = field(default_factory=dict)
    unsure: tuple[UnsureKind, ...] = ()
    asides: tuple[Aside, ...] = ()

    @property
    def misfits(self) -> tuple[Misfit, ...]:
        """All rows that became no device, by their line."""
        found = [misfit for robot in self.robots for misfit in robot.misfits]
        return tuple(sorted(dict.fromkeys(found), key=lambda misfit: (misfit.sheet, misfit.line)))
