"""Reads the catalogue: boards, port types, kinds, parts and rules."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.loading import built_in, wordings
from namegen.loading.document import document
from namegen.loading.examples import Examples
from namegen.loading.loaded import Loaded, listed
from namegen.loading.nodes import FieldNode, GroupNode, NodePlaces, TextNode, keys_in, texts_in
from namegen.loading.shapes.catalogue import BoardShape, CatalogueShape, KindShape, PartShape
from namegen.loading.unknown_words import no_such_ports, unknown_kind, unknown_port_type
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
from namegen.model.places import Place

_FIGURES = ("port_amps", "port_volts")

NO_CATALOGUE = Catalogue(None, {}, PORT_TYPES, KINDS, {})
"""What robots share when the workspace has no catalogue: built-in port types and kinds."""


def read_catalogue(data: bytes, path: str) -> Loaded[Catalogue]:
    """Return the catalogue merged with the built-in port types and kinds, and every fault."""
    tree, faults = document(data, path)
    if tree is None:
        return Loaded(None, listed(faults))
    checked = validated(CatalogueShape, tree, Examples(tree))
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
        self._one_word(keys_in(tree, "port_types"), "A port type")
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
        self._known_types(texts_in(entry.value, "port"))
        before = KINDS.get(name)
        ports = before.ports if shape.port is None and before else tuple(shape.port or ())
        return Kind(name, ports, shape.address, NodePlaces(entry.value, entry.key))

    def _board(self, name: str, shape: BoardShape) -> Board:
        entry = self._entry("boards", name)
        ports = shape.ports or {}
        self._one_word(keys_in(entry.value, "ports"), "A port type")
        self._one_word(keys_in(entry.value, "built_in"), "A label")
        self._known_types(keys_in(entry.value, "ports"))
        for node in [one for field in _FIGURES for one in keys_in(entry.value, field)]:
            if node.value not in ports:
                self.faults.append(no_such_ports(node.value, node.place, ports))
        addresses = {}
        for label, below in (shape.built_in or {}).items():
            self._known_kind(below.kind, built_in.kind_place(entry.value, label))
            occupied = built_in.occupied(entry.value, label, below, ports)
            if isinstance(occupied, Fault):
                self.faults.append(occupied)
            elif occupied:
                addresses[label] = occupied
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
        self._known_types(texts_in(entry.value, "port"))
        for node in texts_in(entry.value, "kind"):
            self._known_kind(shape.kind, node.place, *(shape.port or ())[:1])
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
        for node in keys_in(entry.value, "at_most"):
            self._known_kind(node.value, node.place)
        allowed = self._shape.rules.allowed_parts
        return Rules(
            None if allowed is None else tuple(allowed),
            self._shape.rules.at_most or {},
            NodePlaces(entry.value, entry.key),
        )

    def _one_word(self, nodes: Iterable[TextNode], what: str) -> None:
        """Note a fault for each name that could not stand in a port."""
        for node in nodes:
            if len(node.value.split()) != 1:
                message = Examples(self._tree).filled(wordings.one_word(what, node.value))
                self.faults.append(Fault("wrong-value", message, node.place, node.value))

    def _known_types(self, nodes: Iterable[TextNode]) -> None:
        for node in nodes:
            if node.value not in self._port_types and len(node.value.split()) == 1:
                known = self._port_types
                self.faults.append(unknown_port_type(node.value, node.place, known))

    def _known_kind(self, kind: str | None, place: Place, port_type: str | None = None) -> None:
        if kind is not None and kind not in self._kinds:
            self.faults.append(unknown_kind(kind, place, self._kinds, port_type))
