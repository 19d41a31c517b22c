"""What is plugged in where: every use of a port, by whom, in which setup; and what is free."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from msgspec import Struct

from namegen.checks.wording import listed, quoted
from namegen.model.boards import Places
from namegen.model.manifests import Change, Device, Port
from namegen.model.places import Place
from namegen.model.views import RobotView
from namegen.text.terminal import printable


class PortUse(Struct, frozen=True):
    """One port that something is plugged into.

    ``device`` is the device as it is wired in that setup, or None when the port
    is taken by the uplink of controller ``name``. ``index`` is that of the port
    among the device's own.
    """

    name: str
    port: Port
    places: Places
    device: Device | None = None
    index: int = 0
    setup: str | None = None

    @property
    def who(self) -> str:
        """The user of the port, as a message calls it."""
        return quoted(self.name) if self.device else f"the uplink of controller {quoted(self.name)}"

    @property
    def place(self) -> Place:
        """Where the port was written; worked out when asked for, since most uses are right."""
        if self.device is None:
            return self.places["uplink"]
        own = self.places.get(f"port.{self.index}") or self.places.get("port")
        return own or self.device.place("port")


def written_uses(view: RobotView) -> Iterator[PortUse]:
    """Yield each port once for every place in the manifest that names it."""
    yield from _uplinks(view)
    for device in view.manifest.devices.values():
        yield from _uses(device, None)
    for setup in view.manifest.setups.values():
        for name, change in setup.change.items():
            if name in view.manifest.devices and change.ports is not None:
                device = setup.applied_to(view.manifest.devices[name])
                yield from _uses(device, setup.name, change)


def uses_in(view: RobotView, setup: str | None) -> Iterator[PortUse]:
    """Yield the ports that are taken in a setup; None is for a robot without setups."""
    yield from _uplinks(view)
    chosen = view.manifest.setups.get(setup or "")
    for device in view.manifest.devices_in(setup):
        yield from _uses(device, setup, chosen.change.get(device.name) if chosen else None)


def setups_of(view: RobotView) -> tuple[str | None, ...]:
    """Return the setups to judge one after the other; (None,) where there are none."""
    return tuple(view.manifest.setups) or (None,)


def variants(view: RobotView) -> Iterator[Device]:
    """Yield every device as the manifest describes it, and again for each setup that changes it."""
    yield from view.manifest.devices.values()
    for setup in view.manifest.setups.values():
        for name in setup.change:
            if name in view.manifest.devices:
                yield setup.applied_to(view.manifest.devices[name])


def exists(view: RobotView, port: Port) -> bool | None:
    """Return whether the controller has this port; None when its board is not known."""
    board = view.board(port.controller)
    if board is None:
        return None
    if port.label is None:
        return port.type in board.built_in
    return port.label in board.ports.get(port.type, ())


def is_shared(view: RobotView, port: Port) -> bool:
    """Whether several devices may be plugged into the port (a bus)."""
    found = view.catalogue.port_types.get(port.type)
    return found is not None and found.shared


def is_dead(view: RobotView, port: Port) -> bool:
    """Whether the manifest marks the port as broken."""
    controller = view.manifest.controllers.get(port.controller)
    return controller is not None and (port.type, port.label) in controller.dead


def free_labels(view: RobotView, controller: str, port_type: str) -> list[str]:
    """Return the labels of unbroken ports that nothing is plugged into in any setup.

    A shared port counts as free.
    """
    board = view.board(controller)
    taken = {use.port for use in written_uses(view)}
    ports = (
        [Port(controller, port_type, label) for label in board.ports.get(port_type, ())]
        if (board)
        else []
    )
    return [
        port.label or ""
        for port in ports
        if not is_dead(view, port) and (port not in taken or is_shared(view, port))
    ]


def ranges(labels: Iterable[str]) -> str:
    """Return labels as a catalogue writes them: three numbers in a row or more as ``1-3``."""
    runs: list[list[str]] = []
    for label in labels:
        follows = runs and label.isdecimal() and runs[-1][-1].isdecimal()
        if follows and int(label) == int(runs[-1][-1]) + 1:
            runs[-1].append(label)
        else:
            runs.append([label])
    shown: list[str] = []
    for run in runs:
        shown += [f"{run[0]}-{run[-1]}"] if len(run) > 2 else run
    return printable(", ".join(shown))


def free_ports(view: RobotView, controller: str, port_types: Iterable[str]) -> str:
    """Return a sentence that names free ports: on this controller, or else on the others."""
    types = list(port_types)
    here = _free_on(view, controller, types)
    others = [name for name in view.manifest.controllers if name != controller]
    found = here or [text for name in others for text in _free_on(view, name, types)]
    if found:
        return f"Free {'; '.join(found)}."
    if view.board(controller) is None:
        return ""
    return f"No {listed(types, last='or')} port of this robot is free."


def _free_on(view: RobotView, controller: str, port_types: list[str]) -> list[str]:
    found = []
    for port_type in port_types:
        labels = free_labels(view, controller, port_type)
        if labels:
            noun = "port" if len(labels) == 1 else "ports"
            where = printable(f"{port_type} {noun} on {controller}")
            found.append(f"{where}: {ranges(labels)}")
    return found


def _uplinks(view: RobotView) -> Iterator[PortUse]:
    for controller in view.manifest.controllers.values():
        if controller.uplink is not None:
            yield PortUse(controller.name, controller.uplink, controller.places)


def _uses(device: Device, setup: str | None, change: Change | None = None) -> Iterator[PortUse]:
    places = change.places if change and change.ports is not None else device.places
    for index, port in enumerate(device.ports):
        yield PortUse(device.name, port, places, device, index, setup)
