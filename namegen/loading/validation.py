"""Holds a tree against its shape; what does not fit becomes a fault at its place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Generic, TypeVar

from msgspec import Struct, field
from pydantic import ValidationError
from pydantic_core import ErrorDetails

from namegen.loading import wordings
from namegen.loading.anatomy import below, fields_of, shape_in
from namegen.loading.examples import Examples
from namegen.loading.loaded import MOST_FAULTS
from namegen.loading.nodes import GroupNode, ListNode, Node, TextNode, plain
from namegen.loading.shapes.manifest import SetupShape
from namegen.loading.shapes.shape import Shape
from namegen.loading.unknown_fields import UnknownField, unknown_field
from namegen.model.findings import Fault

S = TypeVar("S", bound=Shape)
Loc = tuple[int | str, ...]

_ROUNDS = 8
"""A field that is read as the one that was meant is looked into in the next round."""
_MORE = "This does not fit here either. Mend the other faults, then look again."


class Validated(Struct, Generic[S]):
    """A filled shape, and the faults. Fields that were wrong count as left out."""

    shape: S
    faults: list[Fault] = field(default_factory=list)


def validated(
    shape: type[S], root: GroupNode, examples: Examples, *, complete: bool = True
) -> Validated[S]:
    """Return what a tree says, and its faults; wrong fields are taken out of the tree.

    A field whose name has a slip is read as the one that was meant. ``complete``
    False leaves missing fields unsaid: part of the text is elsewhere.
    """
    result = Validated(shape.model_construct())
    check = _Check(shape, root, examples, result.faults)
    for _ in range(_ROUNDS):
        try:
            result.shape = shape.model_validate(plain(root))
            break
        except ValidationError as error:
            check.take_out(error)
    if complete:
        check.missing(result.shape, root, None)
    return result


class _Spot(Struct, frozen=True):
    """Where an error of pydantic lies, as far as the tree goes."""

    parent: GroupNode | ListNode
    step: int | str
    """Field or index of the node in its parent."""
    node: Node
    inside: type[Shape] | None
    """The shape that the step is a field of."""
    expected: object
    """The type that belongs there."""


class _Check(Struct):
    """One tree, the shape that it is held against, and the faults so far."""

    shape: type[Shape]
    root: GroupNode
    examples: Examples
    faults: list[Fault]

    def take_out(self, error: ValidationError) -> None:
        """Note a fault for each error, and take what is wrong out of the tree."""
        details = error.errors(include_url=False, include_input=False)
        spots = [self._descend(detail["loc"]) for detail in details]
        unknown: dict[int, UnknownField] = {}
        for index, (detail, spot) in enumerate(zip(details, spots, strict=True)):
            # Looking for the nearest field takes time; hostile files have thousands of faults.
            if len(self.faults) > MOST_FAULTS:
                self.faults.append(Fault("wrong-value", _MORE, spot.node.place))
            elif detail["type"] == "extra_forbidden" and spot.inside:
                unknown[index] = self._unknown(spot, spot.inside)
            else:
                self.faults.append(self._fault(detail, spot))
        for index, spot in reversed(list(enumerate(spots))):
            _put_right(spot, unknown.get(index))

    def _descend(self, loc: Loc) -> _Spot:
        """Follow an error's path through tree and shape."""
        spot = _Spot(self.root, "", self.root, None, self.shape)
        for part in loc:
            node = spot.node
            deeper: Node | None = None
            if isinstance(node, GroupNode) and isinstance(part, str):
                deeper = node.value(part)
            elif isinstance(node, ListNode) and isinstance(part, int) and part < len(node.items):
                deeper = node.items[part]
            if deeper is None or isinstance(node, TextNode):
                break
            spot = _Spot(node, part, deeper, *below(spot.expected, part))
        return spot

    def _unknown(self, spot: _Spot, inside: type[Shape]) -> UnknownField:
        assert isinstance(spot.parent, GroupNode)
        name = str(spot.step)
        found = unknown_field(name, spot.parent, inside, self.shape)
        place = spot.parent.fields[name].key.place
        self.faults.append(Fault("unknown-field", found.message, place, name, found.meant))
        return found

    def _fault(self, detail: ErrorDetails, spot: _Spot) -> Fault:
        node, here = spot.node, shape_in(spot.expected)
        if here is SetupShape and detail["type"] == "wrong_value":
            message = wordings.setup_expected(self.examples.names("devices"))
        elif detail["type"] == "wrong_value":
            message = self.examples.filled(detail["msg"])
        elif here is not None:
            message = wordings.group_expected(str(spot.step), here, node, self.examples)
        elif detail["type"] == "list_type":
            message = wordings.list_expected(node)
        else:
            message = wordings.map_expected(node)
        found = node.value if isinstance(node, TextNode) else None
        return Fault("wrong-value", message, node.place, found)

    def missing(self, shape: Shape, node: Node, key: TextNode | None) -> None:
        """Note a fault for each needed field that is not there, in this shape and below it."""
        if isinstance(node, TextNode) and not node.cleared:
            return
        cls = type(shape)
        for name in cls.needed:
            if getattr(shape, name) is None and not {name, ""} & node.spoilt:
                place = key.place if key else node.source.place(node.start, node.start)
                who = f"`{key.value}`" if key else cls.what[0].upper() + cls.what[1:]
                line = f"{name}: {self.examples.value(cls, name)}"
                message = wordings.missing_field(f"{who} has no `{name}`", line, node)
                self.faults.append(Fault("missing-field", message, place, expected=name))
        if isinstance(node, GroupNode):
            for inner in _shapes_below(shape, node):
                self.missing(*inner)


def _put_right(spot: _Spot, unknown: UnknownField | None) -> None:
    """Take a wrong value out of the tree, or give a field the name that was meant."""
    parent, step = spot.parent, spot.step
    if isinstance(parent, ListNode):
        if isinstance(step, int) and step < len(parent.items):
            del parent.items[step]
        return
    if not isinstance(step, str) or step not in parent.fields:
        return
    if unknown and unknown.meant and unknown.sure:
        _rename(parent, step, unknown.meant)
        return
    parent.spoilt |= {step, unknown.meant} if unknown and unknown.meant else {step}
    if _keeps_its_name(spot):
        found = parent.fields[step]
        parent.fields[step] = found._replace(value=_known_by_name(found.value))
        return
    if spot.inside is None and shape_in(spot.expected):
        _excuse(parent, step)
    del parent.fields[step]


def _rename(group: GroupNode, typed: str, meant: str) -> None:
    """Read a field as the one that was meant; where that stands too, add what it lacks."""
    added, there = group.fields[typed].value, group.value(meant)
    if there is None:
        fields = group.fields.items()
        group.fields = {meant if name == typed else name: found for name, found in fields}
        return
    if isinstance(added, GroupNode) and isinstance(there, GroupNode):
        there.fields = {**added.fields, **there.fields}
    del group.fields[typed]


def _known_by_name(value: Node) -> GroupNode:
    """Return an empty group in place of a value, so that its entry stays known."""
    return GroupNode(value.source, value.start, value.end, flow=False, spoilt=frozenset({""}))


def _excuse(parent: GroupNode, step: str) -> None:
    """Let the entry above a field that is indented too little miss what stands there."""
    before = list(parent.fields)[: list(parent.fields).index(step)]
    for name in reversed(before):
        value = parent.fields[name].value
        if isinstance(value, TextNode) and value.cleared:
            value.spoilt |= {""}
            return


def _keeps_its_name(spot: _Spot) -> bool:
    """Whether something that is no group names an entry all the same, such as a device.

    ``kind: motor`` in the column of the devices names none.
    """
    shape = shape_in(spot.expected)
    if shape is None or isinstance(spot.node, GroupNode):
        return False
    return spot.inside is not None or spot.step not in fields_of(shape)


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
            for inner, entry in value.items():
                if isinstance(entry, Shape):
                    yield entry, node.fields[inner].value, node.fields[inner].key
        elif isinstance(value, list) and isinstance(node, ListNode):
            for entry, item in zip(value, node.items, strict=False):
                if isinstance(entry, Shape):
                    yield entry, item, None
