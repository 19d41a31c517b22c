"""Whether a manifest accepts a finding, with the user's reason.

Only warnings and notes can be accepted. An error means that an output would be
wrong or that a program would move another machine; an acceptance of one has no
effect and is itself reported (``wrong-value``).
"""

from __future__ import annotations

from namegen.model.findings import Finding, Severity
from namegen.model.manifests import Acceptance, Manifest
from namegen.model.places import Place


def accepted(finding: Finding, manifest: Manifest) -> Acceptance | None:
    """Return the manifest's acceptance that covers a finding of this robot, or None.

    An acceptance without a device covers every finding of its kind. One with a
    device covers findings that stand in that device's row, or in a setup's change
    of it, or point there, and findings in code whose text, found or expected, is its name.
    """
    return next((one for one in manifest.accepts if covers(one, finding, manifest)), None)


def covers(acceptance: Acceptance, finding: Finding, manifest: Manifest) -> bool:
    """Whether one acceptance covers a finding of this robot."""
    if finding.severity is Severity.ERROR or acceptance.kind != finding.kind:
        return False
    return acceptance.device is None or _concerns(finding, acceptance.device, manifest)


def _concerns(finding: Finding, name: str, manifest: Manifest) -> bool:
    if name in (finding.found, finding.expected):
        return True
    places = _places(name, manifest)
    return finding.place in places or any(one.place in places for one in finding.related)


def _places(name: str, manifest: Manifest) -> set[Place]:
    device = manifest.devices.get(name)
    found = set(device.places.values()) if device else set()
    for setup in manifest.setups.values():
        change = setup.change.get(name)
        found |= set(change.places.values()) if change else set()
    return found
