"""A device name that nobody can type or copy reliably, or that gives no identifier."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from namegen.checks.manifest import robot_names
from namegen.checks.manifest.own_identifiers import remedy
from namegen.checks.wording import listed, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.places import Place
from namegen.model.views import RobotView
from namegen.text.lookalikes import invisible, untypeable

KIND = FindingKind(
    name="name-unsafe",
    severity=Severity.ERROR,
    scope="device",
    what="A device name is empty, has blanks at an end or twice in a row, has characters that "
    "nobody sees, or gives no identifier in a language that is generated. Characters that are "
    "not on a plain keyboard are a warning. A robot's name is also the name of files and folders.",
    why="The name must be typed into the controller exactly as it stands here, "
    "and programs must be able to spell it.",
    example=Example(
        flagged="devices:\n  '2ndWinch': {kind: motor, port: bridge motor 1}\n",
        mended="devices:\n  secondWinch: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None by itself: the name is typed on the machine too, so it is changed in both "
    "places together. An identifier of its own changes no name.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield at most one finding for each device name, the gravest, and those of other names."""
    for device in view.manifest.devices.values():
        found = unsafe(view, device)
        if found:
            yield found
    yield from _robot(view)
    kinds: dict[str, Device] = {}
    for device in view.manifest.devices.values():
        kinds.setdefault(device.kind, device)
    for kind, device in kinds.items():
        if kind:
            yield from _no_type_name(view, "kind", kind, device.place("kind"))


def _robot(view: RobotView) -> Iterator[Finding]:
    """Judge the robot's own name."""
    name, place = view.manifest.robot, view.manifest.place("robot")
    refused = robot_names.refused(view)
    if refused:
        message, plain = refused
        yield KIND.finding(place, message, found=name, expected=plain, robot=name)
    else:
        yield from _no_type_name(view, "robot", name, place)


def unsafe(view: RobotView, device: Device) -> Finding | None:
    """Return what makes a device's name unsafe, or None."""
    return (
        _blanks(view, device)
        or _unseen(view, device)
        or _no_identifier(view, device)
        or _untypeable(view, device)
    )


def _finding(
    view: RobotView,
    device: Device,
    message: str,
    expected: str | None = None,
    severity: Severity | None = None,
) -> Finding:
    return KIND.finding(
        device.place(),
        message,
        found=device.name,
        expected=expected,
        robot=view.manifest.robot,
        severity=severity,
    )


def _blanks(view: RobotView, device: Device) -> Finding | None:
    name = device.name
    tidy = " ".join(name.split(" ")).strip(" ") if name.strip(" ") else ""
    while "  " in tidy:
        tidy = tidy.replace("  ", " ")
    if not tidy:
        return _finding(
            view, device, "A device has an empty name. Give it a name to look it up by."
        )
    if tidy == name:
        return None
    where = (
        "begins with a blank"
        if name[0] == " "
        else "ends with a blank"
        if name[-1] == " "
        else "has two blanks in a row"
    )
    message = (
        f"The device name {quoted(name)} {where}, which nobody sees on a sheet. "
        f"Write {quoted(tidy)}, here and on the machine."
    )
    return _finding(view, device, message, tidy)


def _unseen(view: RobotView, device: Device) -> Finding | None:
    unseen = invisible(device.name)
    if not unseen:
        return None
    index, called = unseen[0]
    more = f" and {len(unseen) - 1} more" if len(unseen) > 1 else ""
    hidden = {at for at, _ in unseen}
    clean = "".join(char for at, char in enumerate(device.name) if at not in hidden)
    message = (
        f"The device name {quoted(device.name)} has an invisible character at letter "
        f"{index + 1}: {called}{more}. It probably came with copied text: delete the name and "
        "type it again."
    )
    return _finding(view, device, message, clean or None)


def _untypeable(view: RobotView, device: Device) -> Finding | None:
    foreign = untypeable(device.name)
    if not foreign:
        return None
    index, called = foreign[0]
    plain = unicodedata.normalize("NFKD", device.name).encode("ascii", "ignore").decode("ascii")
    complete = len(plain) == len(device.name)
    remedy_text = (
        f"Write {quoted(plain)}, here and on the machine."
        if complete
        else "Use plain letters and digits, here and on the machine."
    )
    message = (
        f"Letter {index + 1} of the device name {quoted(device.name)} is not on every keyboard: "
        f"{called}. {remedy_text}"
    )
    return _finding(view, device, message, plain if complete else None, Severity.WARNING)


def _no_identifier(view: RobotView, device: Device) -> Finding | None:
    failing = [scheme for scheme in view.schemes if not scheme.valid(scheme.constant(device))]
    if not failing:
        return None
    scheme = failing[0]
    own = device.identifiers.get(scheme.language)
    if own is not None:
        message = (
            f"{quoted(own)} cannot be an identifier in {scheme.language}. Choose another one for "
            f"{quoted(device.name)}: letters, digits and _, beginning with a letter."
        )
        return KIND.finding(
            device.places.get(f"identifiers.{scheme.language}") or device.place("identifiers"),
            message,
            found=own,
            robot=view.manifest.robot,
        )
    gives = scheme.constant(device)
    shown = f"it would be {quoted(gives)}" if gives else "it has neither letters nor digits"
    message = (
        f"The name {quoted(device.name)} gives no identifier in "
        f"{listed(one.language for one in failing)}: {shown}. Keep the name and give the device "
        f"an identifier of its own, such as {remedy(device, failing)}, or rename it."
    )
    return _finding(view, device, message)


def _no_type_name(view: RobotView, what: str, name: str, place: Place) -> Iterator[Finding]:
    """Judge the name of the robot or of a kind in use, which becomes a type name."""
    failing = [one for one in view.schemes if not one.valid(one.type_name(name))]
    if failing:
        message = (
            f"The {what} {quoted(name)} gives no type name in "
            f"{listed(one.language for one in failing)}. Give it a name that begins with a "
            "plain letter."
        )
        yield KIND.finding(place, message, found=name, robot=view.manifest.robot)
