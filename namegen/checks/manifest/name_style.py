"""A device name that is not written in the workspace's style."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.manifest.name_unsafe import unsafe
from namegen.checks.wording import quoted, sentences, to_write
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import RobotView
from namegen.text.words import convert, follows

KIND = FindingKind(
    name="name-style",
    severity=Severity.WARNING,
    scope="device",
    what='A device name is not written in the style that namegen.yaml asks for under "names".',
    why="When every name follows one pattern, people type the capitals right without looking.",
    example=Example(
        flagged="devices:\n  Bow_Thruster: {kind: motor, port: bridge motor 1}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None by itself: namegen rename changes a name in the manifest, the code and the "
    "outputs; the machine must be told too.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each name in another style; unsafe names are left to their own kind."""
    style = view.names.style
    if style == "any":
        return
    for device in view.manifest.devices.values():
        name = device.name
        if follows(name, style) or unsafe(view, device):
            continue
        wanted = convert(name, style)
        good = wanted != name and follows(wanted, style) and wanted not in view.manifest.devices
        message = sentences(
            f"{quoted(name)} is not written in {style}, as namegen.yaml asks.",
            _remedy(name, wanted, good, wanted in view.manifest.devices),
        )
        yield KIND.finding(
            device.place(),
            message,
            found=name,
            expected=wanted if good else None,
            robot=view.manifest.robot,
        )


def _remedy(name: str, wanted: str, good: bool, taken: bool) -> str:
    if taken:
        return f"Another device is called {quoted(wanted)} already, so choose a name of its own."
    if not good:
        return "Choose a name of letters and digits that begins with a letter."
    if name.replace("_", "").replace("-", "").isalnum() and not name.startswith("-"):
        return f"Rename it everywhere with {to_write(f'namegen rename {name} {wanted}')}."
    return f"Rename it to {quoted(wanted)}."
