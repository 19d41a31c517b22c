"""A port names a controller that the robot does not have."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from msgspec.structs import replace

from namegen.checks.hints import did_you_mean, nearest
from namegen.checks.port_words import ask, meant
from namegen.checks.wiring import written_uses
from namegen.checks.wording import named, quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import RobotView

KIND = FindingKind(
    name="no-such-controller",
    severity=Severity.ERROR,
    scope="device",
    what='A port begins with a controller that is not listed under "controllers".',
    why="Nobody can tell which board is meant, so the sheet would send the wire nowhere.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: brigde motor 1}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None by itself: write the controller's name as it stands under controllers, "
    "or add the controller there.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each port of an unknown controller."""
    controllers = view.manifest.controllers
    for use in written_uses(view):
        word = use.port.controller
        if word in controllers:
            continue
        ports = meant(view, use.port)
        guess = None if ports else nearest(word, controllers)
        port = ports[0] if len(ports) == 1 else guess and replace(use.port, controller=guess)
        message = sentences(
            f"{use.who} is plugged into {quoted(str(use.port))}, "
            f"but {view.manifest.robot} has no controller {quoted(word)}.",
            ask(ports) or did_you_mean(guess) or _known(controllers),
        )
        yield KIND.finding(
            use.place,
            message,
            found=str(use.port),
            expected=str(port) if port else None,
            robot=view.manifest.robot,
        )


def _known(controllers: Iterable[str]) -> str:
    names = list(controllers)
    if not names:
        return "List its controllers and their boards under `controllers`."
    return f"It has {named(names)}."
