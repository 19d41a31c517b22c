"""A setup or an acceptance names a device that the robot does not have."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.hints import did_you_mean, nearest
from namegen.checks.wording import quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Setup
from namegen.model.places import Place
from namegen.model.views import RobotView

KIND = FindingKind(
    name="no-such-device",
    severity=Severity.ERROR,
    scope="robot",
    what="A setup or an accepted finding names a device that is not listed under devices.",
    why="The setup would silently be another one than its author meant.",
    example=Example(
        flagged="devices:\n  netWinch: {kind: motor, port: bridge motor 1}\n"
        "  rudder: {kind: servo, port: bridge servo 1}\n"
        "setups:\n  tank-test: {without: [netWich]}\nselected: tank-test\n",
        mended="devices:\n  netWinch: {kind: motor, port: bridge motor 1}\n"
        "  rudder: {kind: servo, port: bridge servo 1}\n"
        "setups:\n  tank-test: {without: [netWinch]}\nselected: tank-test\n",
    ),
    repair="None by itself: write the device's name as it stands under devices, or take it out.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each unknown device of a setup or an acceptance."""
    for setup in view.manifest.setups.values():
        for name, place in _names_in(setup):
            if name not in view.manifest.devices:
                yield _finding(view, f"Setup {quoted(setup.name)}", name, place)
    for acceptance in view.manifest.accepts:
        name = acceptance.device or ""
        if name and name not in view.manifest.devices:
            place = acceptance.places.get("device") or view.manifest.place("accept")
            yield _finding(view, f"The accepted {quoted(acceptance.kind)}", name, place)


def _names_in(setup: Setup) -> Iterator[tuple[str, Place]]:
    for field, names in (("only", setup.only or ()), ("without", setup.without)):
        for index, name in enumerate(names):
            place = setup.places.get(f"{field}.{index}") or setup.places.get(field)
            yield name, place or setup.places[""]
    for name, change in setup.change.items():
        yield name, change.places[""]


def _finding(view: RobotView, where: str, name: str, place: Place) -> Finding:
    guess = nearest(name, view.manifest.devices)
    message = sentences(
        f"{where} names the device {quoted(name)}, "
        f"but {view.manifest.robot} has none of that name.",
        did_you_mean(guess) or "Add it under `devices`, or take it out here.",
    )
    return KIND.finding(place, message, found=name, expected=guess, robot=view.manifest.robot)
