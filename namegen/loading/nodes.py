"""The tree of a YAML text: texts, lists and groups of fields, each with its place."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple

from namegen.loading.sources import Source
from namegen.model.places import Place

_CLEARED = frozenset({"", "~", "null", "Null", "NULL"})


class Quoted(str):
    """A text that was written in quotes or as a block: never a number, a boolean or nothing."""

    __slots__ = ()


@dataclass(slots=True, eq=False)
class TextNode:
    """A single value. ``style`` is empty for a plain one, else ``'``, ``"``, ``|`` or ``>``."""

    source: Source
    start: int
    end: int
    value: str
    style: str = ""

    @property
    def cleared(self) -> bool:
        """Whether nothing stands here: empty, ``~`` or ``null`` without quotes."""
        return not self.style and self.value in _CLEARED

    @property
    def place(self) -> Place:
        """Where the value stands, its quotes included."""
        return self.source.place(self.start, self.end)


@dataclass(slots=True, eq=False)
class ListNode:
    """A list: ``[a, b]``, or lines that start with ``-``."""

    source: Source
    start: int
    end: int
    flow: bool
    items: list[Node] = field(default_factory=list)

    @property
    def place(self) -> Place:
        """Where the list stands."""
        return self.source.place(self.start, self.end)


@dataclass(slots=True, eq=False)
class GroupNode:
    """A group of fields: ``{a: b}``, or lines of ``a: b``."""

    source: Source
    start: int
    end: int
    flow: bool
    fields: dict[str, FieldNode] = field(default_factory=dict)

    @property
    def place(self) -> Place:
        """Where the group stands."""
        return self.source.place(self.start, self.end)

    def value(self, name: str) -> Node | None:
        """Return the value of a field, or None when the group has no such field."""
        found = self.fields.get(name)
        return found.value if found else None


Node = TextNode | ListNode | GroupNode


class FieldNode(NamedTuple):
    """One field of a group."""

    key: TextNode
    value: Node


def plain(node: Node) -> object:
    """Return the tree as Python's own dictionaries, lists, texts and None (cleared)."""
    if isinstance(node, TextNode):
        if node.style:
            return Quoted(node.value)
        return None if node.value in _CLEARED else node.value
    if isinstance(node, ListNode):
        return [plain(item) for item in node.items]
    return {name: plain(found.value) for name, found in node.fields.items()}


def places(value: Node, key: TextNode | None = None) -> dict[str, Place]:
    """Return the places of a group's fields, as the model keeps them.

    The empty name is the place of the group's key, or where the group starts
    when it has none. Items of a list or group below are ``field.0`` or ``field.name``.
    """
    found = {"": key.place if key else value.source.place(value.start, value.start)}
    if not isinstance(value, GroupNode):
        return found
    for name, (_, node) in value.fields.items():
        found[name] = node.place
        if isinstance(node, ListNode):
            for index, item in enumerate(node.items):
                found[f"{name}.{index}"] = item.place
        elif isinstance(node, GroupNode):
            for inner, below in node.fields.items():
                found[f"{name}.{inner}"] = below.value.place
    return found
