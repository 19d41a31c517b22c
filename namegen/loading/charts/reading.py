"""The rows of a chart -> robots, their devices, and what could not be placed."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from namegen.loading.charts import kinds
from namegen.loading.charts.cells import address, flag, nothing, several
from namegen.loading.charts.chart import Aside, Chart, ChartRobot, Misfit, Placed, UnsureKind
from namegen.loading.charts.controllers import controllers_in
from namegen.loading.charts.entries import Entry
from namegen.loading.charts.ports import Reading
from namegen.model.boards import KINDS
from namegen.model.manifests import Device, Port
from namegen.text.words import convert, split

_ROBOT = re.compile(r"[A-Za-z][A-Za-z0-9_-]*")
_SEVERAL_ROBOTS = re.compile(r"\s*[,;&/+\n]\s*")
_EVERY_ROBOT = frozenset({"all", "both", "each", "every", "all robots", "all boats", "*"})
_FLAGS = ("reversed", "optional")


def read_chart(entries: Sequence[Entry], answers: Mapping[str, str], robot: str) -> Chart:
    """Return what the rows of a chart say; ``robot`` is theirs where nothing else says so.

    ``answers`` are words in the column of kinds, or names where there is no such
    word, -> kind. Words that stay unsure are in ``Chart.unsure``, and their rows
    among the misfits.
    """
    return _Reading(entries, answers, robot).chart()


class _Half(Struct):
    """One robot while its rows are read."""

    name: str
    title: str
    placed: dict[str, tuple[Placed, Entry]] = field(default_factory=dict)
    misfits: list[Misfit] = field(default_factory=list)
    free: dict[Port, None] = field(default_factory=dict)

    def robot(self) -> ChartRobot:
        return ChartRobot(
            self.name,
            tuple(placed for placed, _ in self.placed.values()),
            tuple(self.misfits),
            title=self.title if self.title != self.name else "",
            free=tuple(self.free),
        )


class _Reading:
    def __init__(self, entries: Sequence[Entry], answers: Mapping[str, str], robot: str) -> None:
        self._entries = entries
        self._answers = {kinds.key_of(word): kind for word, kind in answers.items()}
        self._robot = robot
        self._robots: dict[str, _Half] = {}
        self._readings: dict[str, str] = {}
        self._unsure: dict[str, list[tuple[str, str | None]]] = {}
        self._asides: dict[Aside, None] = {}
        self._controllers = controllers_in(entries)

    def chart(self) -> Chart:
        for entry in self._entries:
            for title in self._titles(entry):
                name = robot_name(title)
                half = self._robots.setdefault(name.casefold(), _Half(name, title))
                self._read(entry, half)
        unsure = tuple(
            UnsureKind(word, tuple(dict.fromkeys(place for place, _ in seen)), _agreed(seen))
            for word, seen in self._unsure.items()
        )
        robots = tuple(half.robot() for half in self._robots.values())
        return Chart(robots, (), self._readings, unsure, tuple(self._asides))

    def _titles(self, entry: Entry) -> list[str]:
        """Return the robots of a row; ``all`` are those that the other rows name."""
        said = entry.cell("robot")
        if said.casefold() in _EVERY_ROBOT:
            others = (one.cell("robot") for one in self._entries)
            named = [title for one in others for title in _SEVERAL_ROBOTS.split(one)]
            known = [title for title in named if title and title.casefold() not in _EVERY_ROBOT]
            return list(dict.fromkeys(known)) or [self._robot]
        return [title for title in _SEVERAL_ROBOTS.split(said or self._robot) if title]

    def _read(self, entry: Entry, half: _Half) -> None:
        name = entry.cell("name")
        if nothing(name) and self._free(entry, half):
            return
        if nothing(name):
            self._misfit(half, entry, "it has no name", "give the device a name")
            return
        if name.startswith("="):
            why = "its name is a formula, and the file does not hold its value"
            self._misfit(half, entry, why, "write the name into the chart")
            return
        if name in half.placed:
            self._misfit(half, entry, *_twice(name, entry, half.placed[name][1]))
            return
        kind = self._kind(entry)
        found = self._controllers.ports(entry, kind)
        if kind is None:
            self._without_kind(half, entry)
            return
        objection = self._objection(entry, kind, found)
        if objection:
            self._misfit(half, entry, *objection)
            return
        half.placed[name] = _placed(entry, name, kind, found), entry

    def _free(self, entry: Entry, half: _Half) -> bool:
        """Note a port that nothing is plugged into; return whether the row says so."""
        said = _said(entry, "kind")
        ports = self._controllers.ports(entry, self._kind(entry) if said else None).ports
        if not ports or not all(port.controller for port in ports):
            return False
        if said and not entry.cell("name"):
            return False
        half.free.update(dict.fromkeys(ports))
        self._asides[Aside(entry.row.place, str(entry.row), "a free port")] = None
        return True

    def _objection(self, entry: Entry, kind: str, found: Reading) -> tuple[str, str] | None:
        """Return what is not sure about the ports of a row and what to write, or None."""
        if found.doubt or any(not port.controller for port in found.ports):
            why = found.doubt or "its controller is not sure"
            return why, f"write its port as `{self._example(entry, kind, found)}`"
        for port in found.ports:
            meant = self._controllers.slips.get(port.controller)
            if meant:
                why = f'the controller "{port.controller}" stands here alone, near "{meant}"'
                return why, f"write `{replace(port, controller=meant)}` if that is meant"
        return None

    def _kind(self, entry: Entry) -> str | None:
        """Return the kind of a row's device, or None when it is not sure."""
        cell = _said(entry, "kind")
        answered = self._answers.get(kinds.key_of(cell or entry.cell("name")))
        if cell:
            kind = answered or kinds.kind_of(cell)
            if kind and kind != cell.casefold():
                self._readings[cell] = kind
            return kind
        types = {port.type for port in self._controllers.ports(entry, None).ports}
        named = [name for name in types if name in KINDS]
        return answered or (named[0] if len(named) == 1 == len(types) else None)

    def _without_kind(self, half: _Half, entry: Entry) -> None:
        cell = _said(entry, "kind")
        word = cell or entry.cell("name")
        meant = kinds.meanings(cell or " ".join(split(word)))
        types = (port.type for port in self._controllers.ports(entry, None).ports)
        # The last of several words says what a thing is: a float switch is a switch.
        likely = next((name for name in types if name in KINDS), meant[-1] if meant else None)
        self._unsure.setdefault(word, []).append((entry.row.place, likely))
        why = (
            "no column says what kind of device it is"
            if not cell
            else f'"{cell}" may be {" or ".join(meant)}'
            if len(meant) > 1
            else f'"{cell}" is no kind that is known'
        )
        remedy = f'say what it is: --kind "{word}={likely or "KIND"}"'
        self._misfit(half, entry, why, remedy)

    def _example(self, entry: Entry, kind: str, found: Reading) -> str:
        controller = self._controllers.example(entry)
        if found.ports:
            return str(replace(found.ports[0], controller=controller))
        types = KINDS[kind].ports if kind in KINDS else ()
        said = [name for name in types if name in entry.cell("type").casefold()]
        return f"{controller} {(*said, *types, 'digital')[0]} 1"

    def _misfit(self, half: _Half, entry: Entry, why: str, remedy: str) -> None:
        row = entry.row
        half.misfits.append(Misfit(row.line, str(row), why, remedy, row.sheet))


def robot_name(title: str) -> str:
    """Return a name for a robot that can be one, and a file's: ``Heron II`` is ``heron-ii``.

    >>> robot_name("heron"), robot_name("Heron II"), robot_name("2")
    ('heron', 'heron-ii', 'robot-2')
    """
    if _ROBOT.fullmatch(title):
        return title
    plain = convert(title, "kebab-case")
    kept = "-".join(re.findall(r"[a-z0-9]+", plain))
    return kept if _ROBOT.fullmatch(kept) else f"robot-{kept}".rstrip("-")


def _placed(entry: Entry, name: str, kind: str, found: Reading) -> Placed:
    cell = {key: entry.cell(key) for key in entry.columns.index}
    flags = {key: flag(cell.get(key, "")) for key in _FLAGS}
    number = address(cell.get("address", ""))
    odd = [key for key in _FLAGS if flags[key] is None]
    if cell.get("address") and number is None and not nothing(cell["address"]):
        odd.append("address")
    device = Device(
        name=name,
        kind=kind,
        ports=found.ports,
        part=_said(entry, "part") or None,
        address=found.address if number is None else number,
        does=cell.get("does", ""),
        expect=cell.get("expect", ""),
        note=cell.get("note", ""),
        reversed=bool(flags["reversed"]),
        optional=bool(flags["optional"]),
        formerly=several(_said(entry, "formerly")),
    )
    return Placed(
        device,
        entry.row.line,
        tuple(entry.remarks()),
        tuple(f"{entry.columns.guess[key]}: {cell[key]}" for key in odd),
        entry.row.sheet,
    )


def _said(entry: Entry, field: str) -> str:
    """Return a cell, or the empty text where it says that there is nothing."""
    cell = entry.cell(field)
    return "" if nothing(cell) else cell


def _twice(name: str, entry: Entry, first: Entry) -> tuple[str, str]:
    """Return why a name cannot be there twice, and what to do."""
    where = first.row.place
    if str(entry.row) == str(first.row):
        return f"{where} says the same", "take one of the two out"
    why = f'"{name}" stands in {where} already'
    return why, "give each device its own name; several ports of one device stand in one cell"


def _agreed(seen: list[tuple[str, str | None]]) -> str | None:
    """Return the kind that most ports speak for."""
    votes = Counter(kind for _, kind in seen if kind)
    return votes.most_common(1)[0][0] if votes else None
