"""What a manifest accepts: findings that are right as they are, with the reason."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from namegen.loading.nodes import GroupNode, ListNode, Node, NodePlaces
from namegen.loading.shapes.manifest import AcceptShape, ManifestShape
from namegen.model.manifests import Acceptance


def accepts_of(shape: ManifestShape, tree: GroupNode) -> Iterator[Acceptance]:
    """Yield the acceptances of the robot, then those that stand with its devices."""
    for below, node in _entries(shape.accept, tree):
        yield from _acceptance(below, node, getattr(below, "device", None))
    devices = tree.value("devices")
    for name, device in (shape.devices or {}).items():
        row = devices.value(name) if isinstance(devices, GroupNode) else None
        for below, node in _entries(device.accept, row):
            yield from _acceptance(below, node, name)


def _acceptance(shape: AcceptShape, node: Node, device: str | None) -> Iterator[Acceptance]:
    if shape.finding and shape.because:
        yield Acceptance(shape.finding, shape.because, device, NodePlaces(node))


def _entries(
    shapes: Sequence[AcceptShape] | None, row: Node | None
) -> Iterator[tuple[AcceptShape, Node]]:
    """Yield the entries below ``accept`` with their nodes."""
    node = row.value("accept") if isinstance(row, GroupNode) else None
    yield from zip(shapes or (), node.items if isinstance(node, ListNode) else (), strict=False)
