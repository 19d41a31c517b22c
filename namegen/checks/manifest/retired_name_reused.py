"""An old name of one device is in use again."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from namegen.checks.manifest.own_identifiers import remedy, usable
from namegen.checks.wording import listed, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device
from namegen.model.places import Place, Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="retired-name-reused",
    severity=Severity.WARNING,
    scope="robot",
    what='A name listed under one device\'s "formerly" is the name of a device today, '
    "or a former name of another one too; or it would be the same constant in generated code.",
    why="Code that still says the old name moves another machine now, without any error.",
    example=Example(
        flagged="devices:\n"
        "  bowThruster: {kind: motor, port: bridge motor 1, formerly: [frontMotor]}\n"
        "  frontMotor: {kind: motor, port: bridge motor 2}\n",
        mended="devices:\n"
        "  bowThruster: {kind: motor, port: bridge motor 1, formerly: [frontMotor]}\n"
        "  anchorMotor: {kind: motor, port: bridge motor 2}\n",
    ),
    repair="None by itself: give the newer device a name that was never used.",
)


class _Use(Struct, frozen=True):
    """A name of a device, today's or a former one."""

    device: Device
    name: str


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each former name that is in use, or has two owners."""
    devices = view.manifest.devices
    for name, owners in view.manifest.retired.items():
        holder = devices.get(name)
        if holder is not None:
            for owner in owners:
                yield _in_use(view, name, owner, holder)
        elif len({owner.name for owner in owners}) > 1:
            first, *others = owners
            message = (
                f"{quoted(name)} is a former name of both {quoted(first.name)} and "
                f"{quoted(others[0].name)}, so nobody can tell which one old code means. "
                "Keep it under the device that had the name last."
            )
            related = [
                Related(_written(first, name), f"also a former name of {quoted(first.name)}")
            ]
            yield KIND.finding(
                _written(others[0], name),
                message,
                found=name,
                robot=view.manifest.robot,
                related=related,
            )
    yield from _constants(view)


def _constants(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each former name whose constant is another device's, or was.

    Names that are equal are told already. Such a constant has no deprecated
    alias, and where nothing else is generated under it, nobody would know why.
    """
    clashes: dict[tuple[str, str], tuple[_Use, _Use, list[NamingScheme]]] = {}
    for scheme in view.schemes:
        uses: dict[str, _Use] = {
            scheme.constant(one): _Use(one, one.name) for one in view.manifest.devices.values()
        }
        for use in _former(view):
            constant = scheme.spelled(use.name)
            other = uses.setdefault(constant, use)
            if other.device is use.device or other.name == use.name:
                continue
            if usable(scheme, constant):
                clash = clashes.setdefault((use.name, other.name), (use, other, []))
                clash[2].append(scheme)
    for use, other, schemes in clashes.values():
        yield _one_constant(view, use, other, schemes)


def _former(view: RobotView) -> Iterator[_Use]:
    for device in view.manifest.devices.values():
        for name in device.formerly:
            yield _Use(device, name)


def _one_constant(view: RobotView, use: _Use, other: _Use, schemes: list[NamingScheme]) -> Finding:
    constant = schemes[0].spelled(use.name)
    both = f"{constant} in {listed(one.language for one in schemes)}"
    if other.device.name == other.name:
        place, found, today = other.device.place(), other.name, other.device
        message = (
            f"{quoted(today.name)} is the constant {both}, and so was {quoted(use.name)}, once the "
            f"name of {quoted(use.device.name)}. Old code that says {constant} gets this device "
            "now, and no deprecated constant can be made. Give this one a name that was never "
            f"used, or an identifier of its own, such as {remedy(today, schemes)}."
        )
    else:
        place, found = _written(use.device, use.name), use.name
        message = (
            f"{quoted(other.name)} and {quoted(use.name)}, once the names of "
            f"{quoted(other.device.name)} and {quoted(use.device.name)}, would both be {both}. "
            "Nobody can tell which one old code means, so neither has a deprecated constant. "
            "Keep the name that the code knew last, and take the other one out."
        )
        use = other
    related = Related(_written(use.device, use.name), f"a former name of {quoted(use.device.name)}")
    return KIND.finding(place, message, found=found, robot=view.manifest.robot, related=[related])


def _in_use(view: RobotView, name: str, owner: Device, holder: Device) -> Finding:
    if owner is holder:
        message = (
            f"{quoted(name)} lists its own name under `formerly`. Take it out there: "
            "the field is for names that are no longer used."
        )
        return KIND.finding(_written(owner, name), message, found=name, robot=view.manifest.robot)
    message = (
        f"{quoted(name)} was once the name of {quoted(owner.name)}. Old code that still says "
        f"{quoted(name)} and means {quoted(owner.name)} moves this device now: "
        "give this one a name that was never used."
    )
    return KIND.finding(
        holder.place(),
        message,
        found=name,
        robot=view.manifest.robot,
        related=[Related(_written(owner, name), f"a former name of {quoted(owner.name)}")],
    )


def _written(owner: Device, name: str) -> Place:
    index = owner.formerly.index(name)
    return owner.places.get(f"formerly.{index}") or owner.place("formerly")
