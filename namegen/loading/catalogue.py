"""Reads the catalogue: boards, port types, kinds, parts and rules."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.loading import wordings
from namegen.loading.document import document
from namegen.loading.loaded import Loaded, listed
from namegen.loading.nodes import FieldNode, GroupNode, Node, NodePlaces, TextNode
from namegen.loading.shapes import BoardShape, CatalogueShape, KindShape, PartShape
from namegen.loading.validation import validated
from namegen.model.boards import (
    KINDS,
    PORT_TYPES,
    Board,
    Catalogue,
    Kind,
    Part,
    PortType,
    Rules,
)
from namegen.model.findings import Fault

NO_CATALOGUE = Catalogue(None, {}, PORT_TYPES, KINDS, {})
"""What robots share when the workspace has no catalogue: built-in port types and kinds."""


def read_catalogue(data: bytes, path: str) -> Loaded[Catalogue]:
    """Return the catalogue merged with the built-in port types and kinds, and every fault."""
    tree, faults = document(data, path)
    if tree is None:
        return Loaded(None, listed(faults))
    checked = validated(CatalogueShape, tree)
    conversion = _Conversion(tree, checked.shape)
    catalogue = conversion.catalogue(path)
    return Loaded(catalogue, listed([*faults, *checked.faults, *conversion.faults]))


class _Conversion:
    """A valid tree -> the model; words that are not declared anywhere become faults."""

    def __init__(self, tree: GroupNode, shape: CatalogueShape) -> None:
        self.faults: list[Fault] = []
        self._tree = tree
        self._shape = shape
        own_types = (shape.port_types or {}).items()
        self._port_types = {
            **PORT_TYPES,
            **{name: PortType(name, bool(below.shared)) for name, below in own_types},
        }
        own_kinds = (shape.kinds or {}).items()
        self._kinds = {**KINDS, **{name: self._kind(name, below) for name, below in own_kinds}}

    def catalogue(self, path: str) -> Catalogue:
        shape = self._shape
        boards = {name: self._board(name, below) for name, below in (shape.boards or {}).items()}
        parts = {name: self._part(name, below) for name, below in (shape.parts or {}).items()}
        return Catalogue(path, boards, self._port_types, self._kinds, parts, self._rules())

    def _entry(self, group: str, name: str) -> FieldNode:
        entries = self._tree.fields[group].value
        assert isinstance(entries, GroupNode)
        return entries.fields[name]

    def _kind(self, name: str, shape: KindShape) -> Kind:
        entry = self._entry("kinds", name)
        self._known_types(_texts(entry.value, "port"))
        before = KINDS.get(name)
        ports = before.ports if shape.port is None and before else tuple(shape.port or ())
        return Kind(name, ports, shape.address, NodePlaces(entry.value, entry.key))

    def _board(self, name: str, shape: BoardShape) -> Board:
        entry = self._entry("boards", name)
        self._known_types(_keys(entry.value, "ports"))
        ports = shape.ports or {}
        for field in ("port_amps", "port_volts"):
            for node in _keys(entry.value, field):
                if node.value not in ports:
                    declare = f"List its labels below `ports`: `ports: {{{node.value}: 1-3}}`."
                    self._unknown(node, "port type of this board", ports, declare)
        addresses = {}
        for label, below in (shape.built_in or {}).items():
            key = _below(entry.value, "built_in", label)
            if below.kind is not None and below.kind not in self._kinds:
                self._unknown_kind(
                    key.value if isinstance(key.value, TextNode) else key.key, below.kind
                )
            if below.bus is None and below.address is None:
                continue
            if below.bus is None or below.address is None:
                field = "bus" if below.bus is None else "address"
                example = "bus: i2c 1" if below.bus is None else "address: 0x28"
                message = f"`{label}` has no `{field}`. Add it inside the braces: `{example}`."
                self.faults.append(Fault("missing-field", message, key.key.place, expected=field))
                continue
            bus, port_label = below.bus
            if bus != "i2c":
                message = "Only an I2C bus can be named here, such as `i2c 1`."
                self.faults.append(Fault("wrong-value", message, key.value.place))
                continue
            if port_label not in ports.get(bus, ()):
                message = f"This board has no port `{bus} {port_label}`. Name one of its `ports`."
                self.faults.append(Fault("wrong-value", message, key.value.place))
            addresses[label] = (port_label, below.address)
        return Board(
            name=name,
            ports=ports,
            built_in={label: below.kind or "" for label, below in (shape.built_in or {}).items()},
            built_in_addresses=addresses,
            fuse_amps=shape.fuse_amps,
            port_amps=shape.port_amps or {},
            port_volts=shape.port_volts or {},
            places=NodePlaces(entry.value, entry.key),
        )

    def _part(self, name: str, shape: PartShape) -> Part:
        entry = self._entry("parts", name)
        self._known_types(_texts(entry.value, "port"))
        if shape.kind is not None and shape.kind not in self._kinds:
            for node in _texts(entry.value, "kind"):
                self._unknown_kind(node, shape.kind)
        figures = shape.model_dump(exclude={"kind", "port", "pulse_us"})
        return Part(
            name=name,
            kind=shape.kind,
            ports=tuple(shape.port or ()),
            pulse_us=shape.pulse_us,
            places=NodePlaces(entry.value, entry.key),
            **figures,
        )

    def _rules(self) -> Rules:
        entry = self._tree.fields.get("rules")
        if self._shape.rules is None or entry is None:
            return Rules()
        for node in _keys(entry.value, "at_most"):
            if node.value not in self._kinds:
                self._unknown_kind(node, node.value)
        allowed = self._shape.rules.allowed_parts
        return Rules(
            None if allowed is None else tuple(allowed),
            self._shape.rules.at_most or {},
            NodePlaces(entry.value, entry.key),
        )

    def _known_types(self, nodes: Iterable[TextNode]) -> None:
        for node in nodes:
            if node.value not in self._port_types:
                declare = f"Own port types are declared: `port_types: {{{node.value}: {{}}}}`."
                self._unknown(node, "port type", self._port_types, declare)

    def _unknown_kind(self, node: TextNode, kind: str) -> None:
        declare = f"Own kinds are declared: `kinds: {{{kind}: {{port: digital}}}}`."
        self._unknown(node, "kind", self._kinds, declare, kind)

    def _unknown(
        self,
        node: TextNode,
        what: str,
        known: Iterable[str],
        declare: str,
        word: str | None = None,
    ) -> None:
        word = node.value if word is None else word
        words = list(known)
        message = wordings.unknown_word(word, what, words, declare)
        close = wordings.nearest(word, words)
        self.faults.append(Fault("wrong-value", message, node.place, word, close))


def _below(node: Node, *path: str) -> FieldNode:
    found: FieldNode | None = None
    for name in path:
        assert isinstance(node, GroupNode)
        found = node.fields[name]
        node = found.value
    assert found is not None
    return found


def _keys(node: Node, field: str) -> list[TextNode]:
    """Return the keys of the group in a field."""
    below = node.value(field) if isinstance(node, GroupNode) else None
    return [one.key for one in below.fields.values()] if isinstance(below, GroupNode) else []


def _texts(node: Node, field: str) -> list[TextNode]:
    """Return the texts in a field: one, or those of a list."""
    below = node.value(field) if isinstance(node, GroupNode) else None
    if isinstance(below, TextNode):
        return [] if below.cleared else [below]
    items = getattr(below, "items", []) if not isinstance(below, GroupNode) else []
    return [item for item in items if isinstance(item, TextNode)]
