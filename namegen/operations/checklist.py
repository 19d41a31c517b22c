"""What to look at when a name is right and the robot does not find the device all the same."""

from __future__ import annotations

from namegen.checks.wording import a_device
from namegen.model.manifests import Device, Manifest
from namegen.model.sheet_mark import sheet_mark

_CAUTION = "with the robot switched off, and your local rules kept"


def what_to_check(manifest: Manifest, name: str) -> tuple[str, ...]:
    """Return what to check for a device of this robot, the likeliest first.

    That is the selected setup, what is typed into the machine, the wire, and
    what the program asks for.
    """
    device = _as_selected(manifest, manifest.devices[name])
    points = [_setup(manifest, name)] if manifest.setups else []
    where = _where(device)
    kind = a_device(device.kind) if device.kind else "what it is"
    points.append(
        f'the configuration on the machine: it says "{name}", in these capitals, as {kind} at '
        f"{where}; the sheet with the mark {sheet_mark(manifest)} shows it"
    )
    points.append(_wire(device, where))
    points.append(f'the program: it runs on {manifest.robot}, and looks "{name}" up as {kind}')
    if device.optional:
        points.append("it is optional: the robot may be without it on purpose")
    return tuple(points)


def _as_selected(manifest: Manifest, device: Device) -> Device:
    chosen = manifest.setups.get(manifest.selected or "")
    return chosen.applied_to(device) if chosen else device


def _setup(manifest: Manifest, name: str) -> str:
    having = [setup for setup in manifest.setups.values() if setup.has(name)]
    others = [setup.name for setup in manifest.setups.values() if not setup.has(name)]
    names = " and ".join(f'"{setup.name}"' for setup in having)
    if not having:
        return f"the selected setup: none of this robot's setups has it; {manifest.path} says so"
    told = f"the selected setup: {names} {'has' if len(having) == 1 else 'have'} it"
    if others:
        listed = " and ".join(f'"{other}"' for other in others)
        told += f", {listed} {'leaves' if len(others) == 1 else 'leave'} it out"
    for setup in having:
        moved = setup.change.get(name)
        if moved and moved.ports is not None:
            told += (
                f'; in "{setup.name}" it is at {_where(setup.applied_to(manifest.devices[name]))}'
            )
    return f'{told}; the manifest selects "{manifest.selected}"'


def _where(device: Device) -> str:
    return " and ".join(map(str, device.ports)) or "a port not yet decided"


def _wire(device: Device, where: str) -> str:
    if device.undecided:
        return (
            f"the port: the manifest has not decided it ({device.place('port')}); decide it first"
        )
    if all(port.label is None for port in device.ports):
        return (
            f"the controller: it is built in ({where}); is that controller connected and powered?"
        )
    return f"the wire, {_CAUTION}: it goes into {where}, and is whole"
