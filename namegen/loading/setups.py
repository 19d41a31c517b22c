"""Setups of a manifest: which devices belong to each, what it changes, which one is selected."""

from __future__ import annotations

from collections.abc import Collection

from namegen.loading.nodes import GroupNode, NodePlaces
from namegen.loading.shapes.manifest import ManifestShape, SetupShape
from namegen.loading.wordings import nearest
from namegen.model.findings import Fault
from namegen.model.manifests import Change, Setup


def setups_of(shape: ManifestShape, tree: GroupNode, faults: list[Fault]) -> dict[str, Setup]:
    """Return the setups of a manifest by name."""
    group = tree.value("setups")
    if not isinstance(group, GroupNode):
        return {}
    return {
        name: _setup(name, below, group, faults) for name, below in (shape.setups or {}).items()
    }


def _setup(name: str, shape: SetupShape, group: GroupNode, faults: list[Fault]) -> Setup:
    key, node = group.fields[name]
    if shape.only is not None and shape.without is not None:
        message = (
            "`only` and `without` exclude each other: `only` lists all that belong to the "
            "setup. Delete one of the two."
        )
        faults.append(Fault("wrong-value", message, key.place, name))
    changed = node.value("change") if isinstance(node, GroupNode) else None
    changes = {}
    for device, change in (shape.change or {}).items():
        assert isinstance(changed, GroupNode)
        entry = changed.fields[device]
        changes[device] = Change(change.port, change.part, NodePlaces(entry.value, entry.key))
    return Setup(
        name=name,
        only=None if shape.only is None else tuple(shape.only),
        without=tuple(shape.without or ()),
        change=changes,
        places=NodePlaces(node, key),
    )


def selected_of(
    chosen: str | None, setups: Collection[str], tree: GroupNode, faults: list[Fault]
) -> str | None:
    """Return the setup that is selected on the machine; the first where that is not sure."""
    if chosen is not None and chosen not in setups:
        faults.append(_no_such_setup(chosen, setups, tree))
    elif chosen is None and len(setups) > 1 and "selected" not in tree.spoilt:
        faults.append(_none_selected(setups, tree))
    return chosen if chosen in setups else next(iter(setups), None)


def _no_such_setup(chosen: str, setups: Collection[str], tree: GroupNode) -> Fault:
    close = nearest(chosen, setups)
    if not setups:
        hint = "This robot has no setups: describe it under `setups`, or take `selected` out."
    elif close:
        hint = f"Did you mean `{close}`?"
    else:
        hint = f"Setups of this robot: {_listed(setups)}."
    place = tree.fields["selected"].value.place
    return Fault("wrong-value", f"There is no setup `{chosen}`. {hint}", place, chosen, close)


def _none_selected(setups: Collection[str], tree: GroupNode) -> Fault:
    message = (
        f"There are several setups ({_listed(setups)}), and no `selected` says which one is "
        f"selected on the machine. Add a line `selected: {next(iter(setups))}`."
    )
    return Fault("missing-field", message, tree.fields["setups"].key.place, expected="selected")


def _listed(names: Collection[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
