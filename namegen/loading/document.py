"""The outermost step of each reading: bytes -> a group of fields."""

from __future__ import annotations

from namegen.loading.nodes import GroupNode, TextNode
from namegen.loading.parsing import parsed
from namegen.loading.sources import source_of
from namegen.model.findings import Fault


def document(data: bytes, path: str) -> tuple[GroupNode | None, list[Fault]]:
    """Return the fields of a YAML file and the faults; None when it holds no fields.

    A file that says nothing (empty, or comments only) is an empty group.
    """
    result = parsed(data, path)
    root = result.root
    if isinstance(root, GroupNode):
        return root, result.faults
    if result.faults:
        return None, result.faults
    if root is None or (isinstance(root, TextNode) and root.cleared):
        return _nothing(path), []
    message = (
        "Fields belong here, each on a line of its own: `name: value`. A blank follows the colon."
    )
    return None, [Fault("wrong-value", message, root.place)]


def _nothing(path: str) -> GroupNode:
    return GroupNode(source_of(path, ""), 0, 0, flow=False)
