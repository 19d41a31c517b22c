"""An old name of one device is in use again."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.places import Place, Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="retired-name-reused",
    severity=Severity.WARNING,
    scope="robot",
    what='A name listed under one device\'s "formerly" is the name of a device today, '
    "or a former name of another one too.",
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
