"""Reads ``namegen.yaml``, the settings of a workspace."""

from __future__ import annotations

from typing import cast

from namegen.loading.document import document
from namegen.loading.examples import Examples
from namegen.loading.loaded import Loaded, listed
from namegen.loading.nodes import GroupNode, ListNode, Node, NodePlaces
from namegen.loading.shapes import BuildShape, CodeShape, LookupShape, WorkspaceShape
from namegen.loading.validation import validated
from namegen.model.findings import Fault
from namegen.model.workspaces import (
    BuildEntry,
    CodeEntry,
    LookupRule,
    NameRules,
    NameStyle,
    Settings,
    Shape,
)


def read_settings(data: bytes, path: str) -> Loaded[Settings]:
    """Return the settings of a workspace and every fault of their text.

    Kinds of look-ups stay as they are typed; the catalogue is not known here.
    """
    tree, faults = document(data, path)
    if tree is None:
        return Loaded(None, listed(faults))
    checked = validated(WorkspaceShape, tree, Examples(tree))
    shape = checked.shape
    faults += checked.faults
    style = cast(NameStyle, (shape.names and shape.names.style) or "any")
    lookups = [
        _lookup(below, node, faults)
        for below, node in zip(shape.lookups or (), _items(tree, "lookups"), strict=True)
    ]
    settings = Settings(
        path=path,
        robots=tuple(shape.robots or ()),
        catalogue=shape.catalogue,
        names=NameRules(style, shape.names.longest if shape.names else None),
        lookups=tuple(rule for rule in lookups if rule),
        code=tuple(
            _code(below, node)
            for below, node in zip(shape.code or (), _items(tree, "code"), strict=True)
            if below.path
        ),
        build=tuple(
            _build(below, node)
            for below, node in zip(shape.build or (), _items(tree, "build"), strict=True)
            if below.target and below.to
        ),
        templates=shape.templates,
        places=NodePlaces(tree),
    )
    return Loaded(settings, listed(faults))


def _items(tree: GroupNode, name: str) -> list[Node]:
    node = tree.value(name)
    return node.items if isinstance(node, ListNode) else []


def _lookup(shape: LookupShape, node: Node, faults: list[Fault]) -> LookupRule | None:
    """Return the rule of one entry, or None with a fault when it does not say what is called."""
    given = [name for name in shape.exactly_one if getattr(shape, name)]
    if len(given) != 1:
        written = " and ".join(f"`{name}`" for name in given)
        which = f"has {written}; delete all but one" if given else "has none of them; add one"
        message = (
            "A look-up has exactly one of `call`, `new`, `annotation` and `subscript`, such as "
            f"`call: motor`. This one {which}."
        )
        faults.append(Fault("wrong-value" if given else "missing-field", message, node.place))
        return None
    says = [name for name in ("kind", "kind_at", "kind_by") if getattr(shape, name) is not None]
    if len(says) > 1:
        written = " and ".join(f"`{name}`" for name in says)
        message = f"{written} both say where the kind comes from. Delete all but one."
        faults.append(Fault("wrong-value", message, node.place))
    called = getattr(shape, given[0])
    at = shape.name_at
    return LookupRule(
        shape=cast(Shape, given[0]),
        called=called,
        on=shape.on,
        name_at="rest" if at == "rest" else cast(tuple[int, ...], at) if at is not None else (0,),
        name_key=shape.name_key,
        kind=shape.kind,
        kind_at=shape.kind_at,
        kind_by=shape.kind_by,  # type: ignore[arg-type]
        kinds=shape.kinds or {},
        languages=tuple(shape.languages or ()),
        place=node.place,
    )


def _code(shape: CodeShape, node: Node) -> CodeEntry:
    return CodeEntry(
        path=shape.path or "",
        robots=tuple(shape.robots or ()),
        setup=shape.setup,
        exclude=tuple(shape.exclude or ()),
        place=node.place,
    )


def _build(shape: BuildShape, node: Node) -> BuildEntry:
    return BuildEntry(
        target=shape.target or "",
        to=shape.to or "",
        robots=tuple(shape.robots or ()),
        options=shape.options or {},
        places=NodePlaces(node),
    )
