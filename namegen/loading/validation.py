"""Holds a tree against its shape; what does not fit becomes a fault at its place."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Generic, TypeVar, get_args, get_origin

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from namegen.loading import wordings
from namegen.loading.loaded import MOST_FAULTS
from namegen.loading.nodes import GroupNode, ListNode, Node, TextNode, plain
from namegen.loading.shapes import Shape
from namegen.model.findings import Fault

S = TypeVar("S", bound=Shape)
Loc = tuple[int | str, ...]

_ROUNDS = 3
_MORE = "This does not fit here either. Mend the other faults, then look again."


@dataclass(slots=True)
class Validated(Generic[S]):
    """A filled shape, and the faults. Fields that were wrong count as left out.

    ``spoilt`` are those fields, as the identity of their group and the name:
    that they are missing now is no fault of its own.
    """

    shape: S
    faults: list[Fault] = field(default_factory=list)
    spoilt: set[tuple[int, str]] = field(default_factory=set)


def validated(shape: type[S], root: GroupNode, *, complete: bool = True) -> Validated[S]:
    """Return what a tree says, and its faults; wrong fields are taken out of the tree.

    ``complete`` False leaves missing fields unsaid: part of the text is elsewhere.
    """
    result = Validated(shape.model_construct())
    for _ in range(_ROUNDS):
        try:
            result.shape = shape.model_validate(plain(root))
            break
        except ValidationError as error:
            _take_out(shape, root, error, result)
    if complete:
        _missing(result.shape, root, None, result)
    return result


def _take_out(
    shape: type[Shape], root: GroupNode, error: ValidationError, result: Validated[S]
) -> None:
    """Note a fault for each error, and take what is wrong out of the tree."""
    details = error.errors(include_url=False, include_input=False)
    spots = [_descend(shape, root, detail["loc"]) for detail in details]
    for detail, spot in zip(details, spots, strict=True):
        # Looking for the nearest field takes time; hostile files have thousands of faults.
        told = len(result.faults) <= MOST_FAULTS
        fault = _fault(detail, spot) if told else Fault("wrong-value", _MORE, spot.node.place)
        result.faults.append(fault)
        if fault.kind == "unknown-field" and fault.expected:
            result.spoilt.add((id(spot.parent), fault.expected))
    for spot in reversed(spots):
        parent, step = spot.parent, spot.step
        if isinstance(parent, ListNode):
            if isinstance(step, int) and step < len(parent.items):
                del parent.items[step]
        elif isinstance(step, str) and step in parent.fields:
            result.spoilt.add((id(parent), step))
            found = parent.fields[step]
            if _keeps_its_name(spot):
                # An empty group in its place keeps the entry known.
                empty = GroupNode(parent.source, found.value.start, found.value.end, flow=False)
                result.spoilt.add((id(empty), ""))
                parent.fields[step] = found._replace(value=empty)
            else:
                if spot.inside is None and _shape_in(spot.expected):
                    _excuse(parent, step, result)
                del parent.fields[step]


@dataclass(frozen=True, slots=True)
class _Spot:
    """Where an error of pydantic lies, as far as the tree goes."""

    parent: GroupNode | ListNode
    step: int | str
    """Field or index of the node in its parent."""
    node: Node
    inside: type[Shape] | None
    """The shape that the step is a field of."""
    expected: object
    """The type that belongs there."""


def _descend(shape: type[Shape], root: GroupNode, loc: Loc) -> _Spot:
    """Follow an error's path through tree and shape."""
    spot = _Spot(root, "", root, None, shape)
    for part in loc:
        node = spot.node
        below: Node | None = None
        if isinstance(node, GroupNode) and isinstance(part, str):
            below = node.value(part)
        elif isinstance(node, ListNode) and isinstance(part, int) and part < len(node.items):
            below = node.items[part]
        if below is None or isinstance(node, TextNode):
            break
        spot = _Spot(node, part, below, *_step(spot.expected, part))
    return spot


def _excuse(parent: GroupNode, step: str, result: Validated[S]) -> None:
    """Let the entry above a field that is indented too little miss what stands there."""
    before = list(parent.fields)[: list(parent.fields).index(step)]
    for name in reversed(before):
        value = parent.fields[name].value
        if isinstance(value, TextNode) and value.cleared:
            result.spoilt.add((id(value), ""))
            return


def _keeps_its_name(spot: _Spot) -> bool:
    """Whether something that is no group names an entry all the same, such as a device.

    ``kind: motor`` in the column of the devices names none.
    """
    shape = _shape_in(spot.expected)
    if shape is None or isinstance(spot.node, GroupNode):
        return False
    return spot.inside is not None or spot.step not in wordings.fields_of(shape)


def _step(expected: object, part: int | str) -> tuple[type[Shape] | None, object]:
    """Return the shape that has the field, and the type that lies one step deeper."""
    inside = _shape_in(expected)
    if inside:
        name = wordings.fields_of(inside).get(str(part))
        return inside, inside.model_fields[name].annotation if name else None
    arguments = get_args(_bare(expected))
    return None, arguments[-1] if arguments else None


def _bare(expected: object) -> object:
    """Return a type without ``Annotated`` and ``| None``."""
    while True:
        arguments = get_args(expected)
        if hasattr(expected, "__metadata__"):
            expected = arguments[0]
        elif type(None) in arguments:
            expected = next(one for one in arguments if one is not type(None))
        else:
            return expected


def _shape_in(expected: object) -> type[Shape] | None:
    bare = _bare(expected)
    if isinstance(bare, type) and get_origin(bare) is None and issubclass(bare, Shape):
        return bare
    return None


def _fault(detail: ErrorDetails, spot: _Spot) -> Fault:
    kind, node, name = detail["type"], spot.node, str(spot.step)
    if kind == "extra_forbidden" and spot.inside and isinstance(spot.parent, GroupNode):
        message, meant = wordings.unknown_field(name, spot.inside)
        return Fault("unknown-field", message, spot.parent.fields[name].key.place, name, meant)
    here = _shape_in(spot.expected)
    if kind == "wrong_value":
        message = detail["msg"]
    elif here is not None:
        message = wordings.group_expected(name, here, node)
    elif kind == "list_type":
        message = wordings.list_expected(node)
    else:
        message = wordings.map_expected(node)
    found = node.value if isinstance(node, TextNode) else None
    return Fault("wrong-value", message, node.place, found)


def _missing(shape: Shape, node: Node, key: TextNode | None, result: Validated[S]) -> None:
    """Note a fault for each needed field that is not there, in this shape and below it."""
    if isinstance(node, TextNode) and not node.cleared:
        return
    cls = type(shape)
    for name in cls.needed:
        spoilt = {(id(node), name), (id(node), "")} & result.spoilt
        if getattr(shape, name) is None and not spoilt:
            place = key.place if key else node.source.place(node.start, node.start)
            message = wordings.missing_field(cls, name, key, node)
            result.faults.append(Fault("missing-field", message, place, expected=name))
    if isinstance(node, GroupNode):
        for below in _shapes_below(shape, node):
            _missing(*below, result)


def _shapes_below(shape: Shape, group: GroupNode) -> Iterator[tuple[Shape, Node, TextNode | None]]:
    """Yield each shape inside a shape, with its node and key."""
    for name, value in shape.__dict__.items():
        found = group.fields.get(name)
        if found is None:
            continue
        key, node = found
        if isinstance(value, Shape):
            yield value, node, key
        elif isinstance(value, dict) and isinstance(node, GroupNode):
            for inner, below in value.items():
                if isinstance(below, Shape):
                    yield below, node.fields[inner].value, node.fields[inner].key
        elif isinstance(value, list) and isinstance(node, ListNode):
            for below, item in zip(value, node.items, strict=False):
                if isinstance(below, Shape):
                    yield below, item, None
