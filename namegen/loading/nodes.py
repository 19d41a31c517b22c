"""The tree of a YAML text: texts, lists and groups of fields, each with its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import ClassVar, NamedTuple

from msgspec import Struct, field

from namegen.loading.sources import Source
from namegen.model.places import Place

SOUND: frozenset[str] = frozenset()
"""Nothing of a node is spoilt."""

_CLEARED = frozenset({"", "~", "null", "Null", "NULL"})


class Quoted(str):
    """A text that was written in quotes or as a block: never a number, a boolean or nothing."""

    __slots__ = ()


class TextNode(Struct, eq=False):
    """A single value. ``style`` is empty for a plain one, else ``'``, ``"``, ``|`` or ``>``."""

    source: Source
    start: int
    end: int
    value: str
    style: str = ""
    spoilt: frozenset[str] = SOUND
    """Holds the empty name when something stands here that cannot be read."""

    @property
    def cleared(self) -> bool:
        """Whether nothing stands here: empty, ``~`` or ``null`` without quotes."""
        return not self.style and self.value in _CLEARED

    @property
    def place(self) -> Place:
        """Where the value stands, its quotes included."""
        return self.source.place(self.start, self.end)


class ListNode(Struct, eq=False):
    """A list: ``[a, b]``, or lines that start with ``-``."""

    source: Source
    start: int
    end: int
    flow: bool
    items: list[Node] = field(default_factory=list)
    spoilt: ClassVar[frozenset[str]] = SOUND

    @property
    def place(self) -> Place:
        """Where the list stands."""
        return self.source.place(self.start, self.end)


class GroupNode(Struct, eq=False):
    """A group of fields: ``{a: b}``, or lines of ``a: b``."""

    source: Source
    start: int
    end: int
    flow: bool
    fields: dict[str, FieldNode] = field(default_factory=dict)
    spoilt: frozenset[str] = SOUND
    """Fields that stand in the file and cannot be read, so that they are not missing.

    The empty name stands for any field.
    """

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


def keys_in(node: Node, field: str) -> list[TextNode]:
    """Return the keys of the group in a field of a node."""
    inner = node.value(field) if isinstance(node, GroupNode) else None
    return [one.key for one in inner.fields.values()] if isinstance(inner, GroupNode) else []


def texts_in(node: Node, field: str) -> list[TextNode]:
    """Return the texts in a field of a node: one, or those of a list."""
    inner = node.value(field) if isinstance(node, GroupNode) else None
    if isinstance(inner, TextNode):
        return [] if inner.cleared else [inner]
    items = inner.items if isinstance(inner, ListNode) else []
    return [item for item in items if isinstance(item, TextNode)]


class NodePlaces(Mapping[str, Place]):
    """The places of a group's fields, worked out when asked for: most never are.

    The empty name is the place of the group's key, or where the group starts
    when it has none. What lies below a field is ``identifiers.java`` for a field,
    ``formerly.oldName`` for a text in a list, ``lookups.0`` for any item.
    """

    __slots__ = ("_key", "_value")

    def __init__(self, value: Node, key: TextNode | None = None) -> None:
        self._value = value
        self._key = key

    def __getitem__(self, name: str) -> Place:
        if not name:
            value = self._value
            return self._key.place if self._key else value.source.place(value.start, value.start)
        node = _below(self._value, name)
        if node is None:
            field, _, rest = name.partition(".")
            node = _below(_below(self._value, field), rest)
        if node is None:
            raise KeyError(name)
        return node.place

    def __iter__(self) -> Iterator[str]:
        yield ""
        for name, (_, node) in _fields(self._value):
            yield name
            if isinstance(node, ListNode):
                for index, item in enumerate(node.items):
                    yield f"{name}.{item.value if isinstance(item, TextNode) else index}"
            for inner, _ in _fields(node):
                yield f"{name}.{inner}"

    def __len__(self) -> int:
        return sum(1 for _ in self)


def _fields(node: Node) -> Iterable[tuple[str, FieldNode]]:
    return node.fields.items() if isinstance(node, GroupNode) else ()


def _below(node: Node | None, name: str) -> Node | None:
    """Return what a field's name, an item's text or an item's index leads to."""
    if isinstance(node, GroupNode):
        return node.value(name)
    if isinstance(node, ListNode):
        for index, item in enumerate(node.items):
            if name == (item.value if isinstance(item, TextNode) else None) or name == str(index):
                return item
    return None
