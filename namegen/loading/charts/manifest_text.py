"""A robot of a chart -> the text of its manifest."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.loading.charts.chart import Aside, ChartRobot, Misfit, Placed
from namegen.loading.edits import spelled
from namegen.model.manifests import Change, Device, Port, Setup
from namegen.text.terminal import printable


def manifest_text(
    robot: ChartRobot,
    chart: str,
    above: tuple[str, ...] = (),
    asides: tuple[Aside, ...] = (),
) -> str:
    """Return the manifest; what could not be placed stands in comments at its end.

    ``chart`` is the chart's file name, ``above`` what stood above its headings, and
    ``asides`` are its rows that describe no device.
    """
    lines = [_comment(f"Read from {chart}."), *map(_comment, above)]
    lines.append(f"robot: {spelled(robot.name)}")
    lines += [f"title: {spelled(robot.title)}"] if robot.title else []
    controllers = controllers_of(robot)
    if controllers:
        lines += ["", "controllers:"]
        for name in controllers:
            lines += [f"  {spelled(name)}:", f"    board: {spelled(board_of(name))}"]
    lines += ["", "devices:" if robot.placed else "devices: {}"]
    for placed in robot.placed:
        lines += _device(placed)
    if robot.setups:
        lines += ["", "setups:"]
        for setup in robot.setups.values():
            lines += _setup(setup)
        lines += [f"selected: {spelled(robot.selected)}"] if robot.selected is not None else []
    return "\n".join([*lines, *_misfits(robot.misfits), *_asides(asides)]) + "\n"


def controllers_of(robot: ChartRobot) -> list[str]:
    """Return the controllers that the robot's ports name, in the order of the chart."""
    ports = (*ports_of(robot), *robot.free)
    return list(dict.fromkeys(port.controller for port in ports))


def ports_of(robot: ChartRobot) -> Iterator[Port]:
    """Yield all ports that the robot uses, in any setup."""
    for placed in robot.placed:
        yield from placed.device.ports
    for setup in robot.setups.values():
        for change in setup.change.values():
            yield from change.ports or ()


def board_of(controller: str) -> str:
    """Return the name in the catalogue of the board that a controller is."""
    return f"{controller}-board"


def _device(placed: Placed) -> Iterator[str]:
    device = placed.device
    yield f"  {spelled(device.name)}:"
    for name, value in _fields(device):
        yield f"    {name}: {value}"
    for remark in placed.remarks:
        yield f"    {_comment(remark)}"
    for cell in placed.odd:
        yield f"    {_comment(f'{cell} (not understood)')}"


def _fields(device: Device) -> Iterator[tuple[str, str]]:
    yield "kind", spelled(device.kind)
    yield "port", _ports(device.ports)
    for name in ("part", "does", "expect", "note"):
        value = getattr(device, name)
        if name == "does" and device.address is not None:
            yield "address", f"0x{device.address:02X}"
        if value:
            yield name, spelled(value)
    for name in ("reversed", "optional"):
        if getattr(device, name):
            yield name, "true"
    if device.formerly:
        yield "formerly", _list(device.formerly)


def _setup(setup: Setup) -> Iterator[str]:
    if not setup.without and not setup.change:
        yield f"  {spelled(setup.name)}: everything"
        return
    yield f"  {spelled(setup.name)}:"
    if setup.without:
        yield f"    without: {_list(setup.without)}"
    if setup.change:
        yield "    change:"
        for device, change in setup.change.items():
            yield f"      {spelled(device)}: {{{', '.join(_change(change))}}}"


def _change(change: Change) -> Iterator[str]:
    if change.ports is not None:
        yield f"port: {_ports(change.ports)}"
    if change.part is not None:
        yield f"part: {spelled(change.part)}"


def _ports(ports: tuple[Port, ...]) -> str:
    if not ports:
        return "undecided"
    texts = [str(port) for port in ports]
    return spelled(texts[0]) if len(texts) == 1 else _list(texts)


def _list(texts: list[str] | tuple[str, ...]) -> str:
    return f"[{', '.join(map(spelled, texts))}]"


def _misfits(misfits: tuple[Misfit, ...]) -> Iterator[str]:
    if not misfits:
        return
    yield ""
    yield "# Not placed; write these devices above, then delete their lines here:"
    for misfit in misfits:
        yield _comment(f"{misfit.place}: {misfit.text}")
        yield _comment(f"  {misfit.why}; {misfit.remedy}")


def _asides(asides: tuple[Aside, ...]) -> Iterator[str]:
    if not asides:
        return
    yield ""
    yield "# Rows of the chart that are no devices:"
    for aside in asides:
        yield _comment(f"{aside.place}: {aside.text} ({aside.why})")


def _comment(text: str) -> str:
    return f"# {printable(text)}"
