"""The rows of a chart -> robots, their devices, and what could not be placed."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from namegen.loading.charts import kinds
from namegen.loading.charts.cells import address, flag, several
from namegen.loading.charts.chart import Chart, ChartRobot, Misfit, Placed, UnsureKind
from namegen.loading.charts.columns import Columns
from namegen.loading.charts.ports import Hint, Reading, read_ports, type_of
from namegen.loading.charts.tables import Row, Table
from namegen.model.boards import KINDS
from namegen.model.manifests import Device, Port
from namegen.text.likeness import suggest
from namegen.text.words import convert

_ROBOT = re.compile(r"[A-Za-z][A-Za-z0-9_-]*")
_SEVERAL_ROBOTS = re.compile(r"\s*[,;&/+\n]\s*")
_ONLY_CONTROLLER = "main"
_FLAGS = ("reversed", "optional")


def read_chart(table: Table, columns: Columns, answers: Mapping[str, str], robot: str) -> Chart:
    """Return what a chart says; ``robot`` is its robot where no column says so.

    ``answers`` are words in the column of kinds -> kind. Words that stay unsure
    are in ``Chart.unsure``, and their rows among the misfits.
    """
    return _Reading(table, columns, answers, robot).chart()


@dataclass(slots=True)
class _Half:
    """One robot while its rows are read."""

    name: str
    title: str
    placed: dict[str, Placed] = field(default_factory=dict)
    misfits: list[Misfit] = field(default_factory=list)


class _Reading:
    def __init__(
        self, table: Table, columns: Columns, answers: Mapping[str, str], robot: str
    ) -> None:
        self._columns = columns
        self._answers = {kinds.key_of(word): kind for word, kind in answers.items()}
        self._robot = robot
        self._robots: dict[str, _Half] = {}
        self._readings: dict[str, str] = {}
        self._unsure: dict[str, list[tuple[int, str | None]]] = {}
        headings = columns.headings.line
        self._above = tuple(str(row) for row in table.rows if row.line < headings)
        self._rows = [row for row in table.rows if row.line > headings]
        self._spellings: dict[str, str] = {}  # controllers: in small letters -> as spelled first
        self._slips: dict[str, str] = {}  # controllers named once -> the one that is near
        self._spellings = self._controllers()

    def chart(self) -> Chart:
        before = self._robot
        for row in self._rows:
            before = row.cell(self._columns["robot"]) or before
            for title in filter(None, _SEVERAL_ROBOTS.split(before)):
                name = robot_name(title)
                half = self._robots.setdefault(name.casefold(), _Half(name, title))
                self._read(row, half)
        robots = tuple(
            ChartRobot(
                half.name,
                tuple(half.placed.values()),
                tuple(half.misfits),
                title=half.title if half.title != half.name else "",
            )
            for half in self._robots.values()
        )
        unsure = tuple(
            UnsureKind(word, tuple(dict.fromkeys(line for line, _ in seen)), _agreed(seen))
            for word, seen in self._unsure.items()
        )
        return Chart(robots, self._above, self._readings, unsure)

    def _read(self, row: Row, half: _Half) -> None:
        name = row.cell(self._columns["name"])
        if not name:
            self._misfit(half, row, "it has no name", "give the device a name")
            return
        if name in half.placed:
            why = f'"{name}" stands in line {half.placed[name].line} already'
            remedy = "give each device its own name; several ports of one device stand in one cell"
            self._misfit(half, row, why, remedy)
            return
        kind = self._kind(row)
        found = self._ports(row, kind)
        ports = found.ports or self._ports(row, None).ports
        if kind is None:
            self._without_kind(half, row, ports)
            return
        objection = self._objection(kind, found)
        if objection:
            self._misfit(half, row, *objection)
            return
        half.placed[name] = self._placed(row, name, kind, found)

    def _objection(self, kind: str, found: Reading) -> tuple[str, str] | None:
        """Return what is not sure about the ports of a row and what to write, or None."""
        if found.doubt or any(not port.controller for port in found.ports):
            why = found.doubt or "its controller is not sure"
            return why, f"write its port as `{self._example(kind, found)}`"
        for port in found.ports:
            meant = self._slips.get(port.controller)
            if meant:
                why = f'the controller "{port.controller}" stands here alone, near "{meant}"'
                return why, f"write `{replace(port, controller=meant)}` if that is meant"
        return None

    def _placed(self, row: Row, name: str, kind: str, found: Reading) -> Placed:
        cell = {key: row.cell(self._columns[key]) for key in self._columns.index}
        flags = {key: flag(cell.get(key, "")) for key in _FLAGS}
        number = address(cell.get("address", ""))
        odd = [key for key in _FLAGS if flags[key] is None]
        if cell.get("address") and number is None:
            odd.append("address")
        remarks = [f"{self._columns.guess[key]}: {cell[key]} (not understood)" for key in odd]
        remarks += [
            f"{heading}: {row.cell(at)}"
            for heading, at in self._columns.unused.items()
            if row.cell(at)
        ]
        extra = [text.strip() for text in row.cells[len(self._columns.headings.cells) :]]
        remarks += [text for text in extra if text]
        device = Device(
            name=name,
            kind=kind,
            ports=found.ports,
            part=cell.get("part") or None,
            address=found.address if number is None else number,
            does=cell.get("does", ""),
            expect=cell.get("expect", ""),
            note=cell.get("note", ""),
            reversed=bool(flags["reversed"]),
            optional=bool(flags["optional"]),
            formerly=several(cell.get("formerly", "")),
        )
        return Placed(device, row.line, tuple(remarks))

    def _kind(self, row: Row) -> str | None:
        """Return the kind of a row's device, or None when it is not sure."""
        cell = row.cell(self._columns["kind"])
        if cell:
            kind = self._answers.get(kinds.key_of(cell)) or kinds.kind_of(cell)
            if kind and kind != cell.casefold():
                self._readings[cell] = kind
            return kind
        types = {port.type for port in self._ports(row, None).ports}
        named = [name for name in types if name in KINDS]
        return named[0] if len(named) == 1 == len(types) else None

    def _without_kind(self, half: _Half, row: Row, ports: tuple[Port, ...]) -> None:
        cell = row.cell(self._columns["kind"])
        if not cell:
            remedy = f"write its kind into the chart, one of: {', '.join(KINDS)}"
            self._misfit(half, row, "its kind is not sure", remedy)
            return
        likely = next((port.type for port in ports if port.type in KINDS), None)
        self._unsure.setdefault(cell, []).append((row.line, likely))
        remedy = f'say what it is: --kind "{cell}={likely or "switch"}"'
        self._misfit(half, row, f'"{cell}" is no kind that is known', remedy)

    def _ports(self, row: Row, kind: str | None) -> Reading:
        found = self._read_ports(row, kind)
        return replace(found, ports=tuple(self._settled(port) for port in found.ports))

    def _read_ports(self, row: Row, kind: str | None) -> Reading:
        known = KINDS.get(kind or "")
        types = known.ports if known else ()
        types = (kind,) if kind and kind in types else types
        said = row.cell(self._columns["type"])
        hint = Hint(
            controller=_one_word(row.cell(self._columns["controller"])),
            type=type_of(said) or "",
            label=row.cell(self._columns["label"]),
            types=types,
            controllers=self._spellings,
        )
        if said and not hint.type:
            return Reading(doubt=f'"{said}" is no port type that is known')
        return read_ports(row.cell(self._columns["port"]), hint)

    def _settled(self, port: Port) -> Port:
        """Return a port with its controller as it is spelled first, or the only one there is."""
        spellings = self._spellings
        if port.controller:
            key = port.controller.casefold()
            return replace(port, controller=spellings.get(key, port.controller))
        if len(spellings) > 1:
            return port
        return replace(port, controller=next(iter(spellings.values()), _ONLY_CONTROLLER))

    def _controllers(self) -> dict[str, str]:
        """Return the controllers that the chart names: in small letters -> as spelled first."""
        found: dict[str, str] = {}
        uses: Counter[str] = Counter()
        for row in self._rows:
            kind = kinds.kind_of(row.cell(self._columns["kind"]) or "?")
            named = [port.controller for port in self._read_ports(row, kind).ports]
            named.append(_one_word(row.cell(self._columns["controller"])))
            for name in filter(None, dict.fromkeys(named)):
                found.setdefault(name.casefold(), name)
                uses[name.casefold()] += 1
        often = tuple(name for name, times in uses.items() if times > 1)
        for name in uses.keys() - set(often):
            meant = suggest(name, often).best
            if meant:
                self._slips[found.pop(name)] = found[meant]
        return found

    def _example(self, kind: str, found: Reading) -> str:
        controller = next(iter(self._spellings.values()), _ONLY_CONTROLLER)
        if found.ports:
            return str(replace(found.ports[0], controller=controller))
        types = KINDS[kind].ports if kind in KINDS else ()
        return f"{controller} {(types or ('digital',))[0]} 1"

    def _misfit(self, half: _Half, row: Row, why: str, remedy: str) -> None:
        half.misfits.append(Misfit(row.line, str(row), why, remedy))


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


def _one_word(text: str) -> str:
    return "-".join(text.split())


def _agreed(seen: list[tuple[int, str | None]]) -> str | None:
    """Return the kind that most ports speak for."""
    votes = Counter(kind for _, kind in seen if kind)
    return votes.most_common(1)[0][0] if votes else None
