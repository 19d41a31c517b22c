"""Reads ``namegen.yaml``, the settings of a workspace."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeVar, cast

from namegen.loading.document import document
from namegen.loading.examples import Examples
from namegen.loading.loaded import Loaded, listed
from namegen.loading.lookups import lookup_rule
from namegen.loading.nodes import GroupNode, ListNode, Node, NodePlaces
from namegen.loading.shapes.shape import Shape
from namegen.loading.shapes.workspace import BuildShape, CodeShape, WorkspaceShape
from namegen.loading.validation import validated
from namegen.model.findings import Fault
from namegen.model.workspaces import (
    BuildEntry,
    CodeEntry,
    NameRules,
    NameStyle,
    Settings,
)

S = TypeVar("S", bound=Shape)


def read_settings(data: bytes, path: str) -> Loaded[Settings]:
    """Return the settings of a workspace and every fault of their text.

    Kinds of look-ups stay as they are typed; the catalogue is not known here.
    """
    tree, faults = document(data, path)
    if tree is None:
        return Loaded(None, listed(faults))
    checked = validated(WorkspaceShape, tree, Examples(tree))
    faults += checked.faults
    settings = _settings(checked.shape, tree, faults)
    return Loaded(settings, listed(faults))


def _settings(shape: WorkspaceShape, tree: GroupNode, faults: list[Fault]) -> Settings:
    style = cast(NameStyle, (shape.names and shape.names.style) or "any")
    lookups = [
        lookup_rule(row, node, faults) for row, node in _rows(shape.lookups, tree, "lookups")
    ]
    code = [_code(row, node) for row, node in _rows(shape.code, tree, "code") if row.path]
    build = [
        _build(row, node)
        for row, node in _rows(shape.build, tree, "build")
        if row.target and row.to
    ]
    return Settings(
        path=tree.source.path,
        robots=tuple(shape.robots or ()),
        catalogue=shape.catalogue,
        names=NameRules(style, shape.names.longest if shape.names else None),
        lookups=tuple(rule for rule in lookups if rule),
        code=tuple(code),
        build=tuple(build),
        templates=shape.templates,
        places=NodePlaces(tree),
    )


def _rows(shapes: list[S] | None, tree: GroupNode, name: str) -> Iterator[tuple[S, Node]]:
    """Yield the entries of a list with their nodes."""
    node = tree.value(name)
    yield from zip(shapes or (), node.items if isinstance(node, ListNode) else (), strict=True)


def _code(shape: CodeShape, node: Node) -> CodeEntry:
    return CodeEntry(
        path=shape.path or "",
        robots=tuple(shape.robots or ()),
        setup=shape.setup,
        exclude=tuple(shape.exclude or ()),
        places=NodePlaces(node),
    )


def _build(shape: BuildShape, node: Node) -> BuildEntry:
    return BuildEntry(
        target=shape.target or "",
        to=shape.to or "",
        robots=tuple(shape.robots or ()),
        options=shape.options or {},
        places=NodePlaces(node),
    )
