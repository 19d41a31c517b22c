"""``other-setup``: another setup is selected, or a setup selects other devices."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.sides import severity
from namegen.checks.wording import listed, named, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Manifest
from namegen.model.places import Place
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="other-setup",
    severity=Severity.ERROR,
    scope="robot",
    what="What the machine has is another setup of the manifest than the selected one; or two "
    "manifests select another setup, or differ in what a setup holds.",
    why="Devices that are plugged in are not found, because the machine leaves them out. Selecting "
    "the right setup mends it.",
    example=Example(
        flagged="selected: tank-test",
        mended="selected: harvest",
    ),
    repair="None by itself: select the setup on the machine, or correct `selected`.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield what differs between the setups of two manifests, or which one a list fits."""
    before, after = view.before.manifest, view.after.manifest
    manifest = after or before
    if view.fits is not None and manifest is not None:
        message = (
            f"What was found fits the setup {quoted(view.fits)}, and {quoted(view.setup or '')} is "
            f"selected in the manifest. Select {quoted(view.setup or '')} on the machine, or "
            "correct `selected`."
        )
        place = manifest.place("selected")
        yield KIND.finding(place, message, found=view.fits, robot=manifest.robot)
    elif before is not None and after is not None:
        for place, told in _between(view, before, after):
            yield KIND.finding(place, told, robot=after.robot, severity=severity(KIND, view))


def _between(
    view: ComparisonView, before: Manifest, after: Manifest
) -> Iterator[tuple[Place, str]]:
    """Yield where the setups of two manifests differ, and how."""
    if before.selected != after.selected:
        words = [quoted(m.selected) if m.selected else "no setup" for m in (after, before)]
        told = f"{view.after.label} selects {words[0]}, {view.before.label} {words[1]}."
        yield after.place("selected"), told
    gone = [name for name in before.setups if name not in after.setups]
    new = [name for name in after.setups if name not in before.setups]
    for what, names in (("no longer has", gone), ("has also", new)):
        if names:
            setups = f"setup{'s' if len(names) > 1 else ''} {named(names)}"
            yield after.place("setups"), f"{view.after.label} {what} {setups}."
    for name, setup in after.setups.items():
        told = _contents(view, before, after, name) if name in before.setups else ""
        if told:
            place = setup.places.get("", after.place("setups"))
            yield (
                place,
                f"Setup {quoted(name)} {told} in {view.after.label}, other than in "
                f"{view.before.label}.",
            )


def _contents(view: ComparisonView, before: Manifest, after: Manifest, setup: str) -> str:
    """Return what of the devices that both manifests have a setup holds otherwise."""
    has: list[str] = []
    lacks: list[str] = []
    changes: list[str] = []
    for pair in view.pairs:
        old, new = pair.before.name, pair.after.name
        if old not in before.devices or new not in after.devices:
            continue  # a controller is no part of a setup
        was, there = before.setups[setup].has(old), after.setups[setup].has(new)
        if was != there:
            (has if there else lacks).append(new)
        elif there and _change(before, setup, old) != _change(after, setup, new):
            changes.append(new)
    lists = (("has", has), ("leaves out", lacks), ("has another change of", changes))
    return listed([f"{what} {named(names)}" for what, names in lists if names])


def _change(manifest: Manifest, setup: str, device: str) -> tuple[object, object] | None:
    """Return what a setup says of one device's ports and part."""
    change = manifest.setups[setup].change.get(device)
    return None if change is None else (change.ports, change.part)
