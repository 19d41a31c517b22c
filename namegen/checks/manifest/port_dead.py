"""A device is plugged into a port that is known to be broken."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wiring import exists, free_ports, is_dead, written_uses
from namegen.checks.wording import quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="port-dead",
    severity=Severity.ERROR,
    scope="device",
    what='A device is plugged into a port that the controller lists under "dead".',
    why="The device will not work, and the search for the cause starts in the program.",
    example=Example(
        flagged="controllers:\n  bridge: {board: harbour, dead: [servo 2]}\n"
        "devices:\n  rudder: {kind: servo, port: bridge servo 2}\n",
        mended="controllers:\n  bridge: {board: harbour, dead: [servo 2]}\n"
        "devices:\n  rudder: {kind: servo, port: bridge servo 3}\n",
    ),
    repair="None by itself: move the device, or take the port out of dead when it was mended.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each device or uplink on a dead port."""
    for use in written_uses(view):
        if is_dead(view, use.port) and exists(view, use.port) is not False:
            controller = view.manifest.controllers[use.port.controller]
            index = controller.dead.index((use.port.type, use.port.label or ""))
            place = controller.places.get(f"dead.{index}") or controller.places["dead"]
            message = sentences(
                f"{use.who} is plugged into {quoted(str(use.port))}, which is marked dead.",
                free_ports(view, use.port.controller, [use.port.type]),
                "If the port works again, take it out of `dead`.",
            )
            yield KIND.finding(
                use.place,
                message,
                found=str(use.port),
                robot=view.manifest.robot,
                related=[Related(place, "marked dead here")],
            )
