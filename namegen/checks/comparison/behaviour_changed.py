"""``behaviour-changed``: a device runs the other way, may be absent, or has another address."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from namegen.checks.comparison.sides import by_hand, differing, thing
from namegen.checks.wording import address, listed
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.views import ComparisonView, Pair

KIND = FindingKind(
    name="behaviour-changed",
    severity=Severity.NOTE,
    scope="robot",
    what="A device is reversed or not, may be absent or not, or has another bus address.",
    why="The name and the plug are the same, and the machine does something else.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: bridge motor 1, reversed: true}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None: it tells what changed. Keep clear and try the machine at low power.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield one finding for each device, whatever changed of it."""
    for pair in view.pairs:
        changes = list(_changes(view, pair))
        if changes:
            fields, words = zip(*changes, strict=True)
            if not view.two_manifests:
                yield _other_address(view, pair)
                continue
            message = (
                f"{thing(pair.after)} is {listed(words)} in {view.after.label}, other than in "
                f"{view.before.label}."
            )
            yield differing(KIND, view, pair, fields[0], message)


def _other_address(view: ComparisonView, pair: Pair) -> Finding:
    """Return that a machine has another address than the manifest: a list tells nothing else."""
    message = (
        f"{thing(pair.after)} is {_at(pair.after)} in {view.after.label} and {_at(pair.before)} in "
        f"{view.before.label}."
    )
    advice = by_hand(view, "Set the manifest's address on the device, or correct the manifest.")
    found = differing(KIND, view, pair, "address", message + advice)
    return replace(found, severity=Severity.WARNING)


def _changes(view: ComparisonView, pair: Pair) -> Iterator[tuple[str, str]]:
    """Yield field and words for what the later device is and the earlier is not."""
    old, new = pair.before, pair.after
    if view.both_say("reversed") and old.reversed != new.reversed:
        yield "reversed", "reversed" if new.reversed else "not reversed"
    if view.both_say("optional") and old.optional != new.optional:
        yield "optional", "optional" if new.optional else "not optional"
    read = view.after.manifest is not None or new.address is not None  # a list's cell may be empty
    if view.both_say("address") and read and old.address != new.address:
        yield "address", _at(new)


def _at(device: Device) -> str:
    return "without an address" if device.address is None else f"at {address(device.address)}"
