"""Reads a robot's manifest."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import PurePosixPath

from namegen.loading import wordings
from namegen.loading.accepts import accepts_of
from namegen.loading.examples import Examples
from namegen.loading.inclusion import Inclusion
from namegen.loading.loaded import Loaded, listed
from namegen.loading.nodes import GroupNode, Node, NodePlaces, TextNode
from namegen.loading.setups import selected_of, setups_of
from namegen.loading.shapes.manifest import ControllerShape, DeviceShape, ManifestShape
from namegen.loading.unknown_words import unknown_kind
from namegen.loading.validation import validated
from namegen.model.boards import Catalogue
from namegen.model.findings import Fault
from namegen.model.manifests import Battery, Controller, Device, Manifest, Port


def read_manifest(
    path: str, read: Callable[[str], bytes], catalogue: Catalogue
) -> Loaded[Manifest]:
    """Return a robot's manifest, merged with what it includes, and every fault of the text.

    A device whose kind cannot be decided has the kind ``""`` and a fault; one
    whose port is missing has no ports and no ``port`` among its places.

    Args:
        path: the manifest, relative to the workspace with ``/``.
        read: gives the bytes of a path like it, or raises `UnusableInput`.
        catalogue: what the robots share; decides kinds that are left out.

    Raises:
        UnusableInput: the manifest itself cannot be read.

    """
    inclusion = Inclusion(path, read)
    faults = inclusion.faults
    if inclusion.tree is None:
        return Loaded(None, listed(faults))
    examples = Examples(inclusion.tree, catalogue)
    checked = validated(ManifestShape, inclusion.tree, examples, complete=inclusion.complete)
    faults += checked.faults
    if not inclusion.complete:
        return Loaded(None, listed(faults))
    conversion = _Conversion(checked.shape, inclusion.tree, catalogue, faults)
    return Loaded(conversion.manifest(path, tuple(inclusion.sources)), listed(faults))


class _Conversion:
    """A valid tree -> the model, entry by entry; what is wrong all the same joins ``faults``."""

    def __init__(
        self, shape: ManifestShape, tree: GroupNode, catalogue: Catalogue, faults: list[Fault]
    ) -> None:
        self._shape = shape
        self._tree = tree
        self._catalogue = catalogue
        self._faults = faults
        self._controllers = {
            name: self._controller(name, below) for name, below in (shape.controllers or {}).items()
        }

    def manifest(self, path: str, sources: tuple[str, ...]) -> Manifest:
        shape, tree = self._shape, self._tree
        devices = {name: self._device(name, below) for name, below in (shape.devices or {}).items()}
        setups = setups_of(shape, tree, self._faults)
        return Manifest(
            path=path,
            robot=shape.robot or PurePosixPath(path).stem,
            controllers=self._controllers,
            devices=devices,
            title=shape.title or "",
            revision=shape.revision or "",
            battery=self._battery(),
            setups=setups,
            selected=selected_of(shape.selected, setups, tree, self._faults),
            accepts=tuple(accepts_of(shape, tree)),
            sources=sources,
            places=NodePlaces(tree),
        )

    def _battery(self) -> Battery | None:
        found, shape = self._tree.fields.get("battery"), self._shape.battery
        if shape is None or found is None:
            return None
        places = NodePlaces(found.value, found.key)
        return Battery(shape.volts, shape.fuse_amps, shape.wire_awg, places)

    def _entry(self, group: str, name: str) -> tuple[TextNode, Node]:
        entries = self._tree.fields[group].value
        assert isinstance(entries, GroupNode)
        return entries.fields[name]

    def _controller(self, name: str, shape: ControllerShape) -> Controller:
        key, node = self._entry("controllers", name)
        if len(name.split()) != 1:
            message = wordings.one_word("A controller's name", name)
            message = Examples(self._tree, self._catalogue).filled(message)
            self._faults.append(Fault("wrong-value", message, key.place, name))
        return Controller(
            name=name,
            board=shape.board or "",
            uplink=shape.uplink,
            address=shape.address,
            dead=tuple(shape.dead or ()),
            places=NodePlaces(node, key),
        )

    def _device(self, name: str, shape: DeviceShape) -> Device:
        key, node = self._entry("devices", name)
        return Device(
            name=name,
            kind=self._kind(name, shape, key, node),
            ports=shape.port or (),
            part=shape.part,
            address=shape.address,
            does=shape.does or "",
            expect=shape.expect or "",
            note=shape.note or "",
            reversed=bool(shape.reversed),
            optional=bool(shape.optional),
            formerly=tuple(shape.formerly or ()),
            identifiers=shape.identifiers or {},
            travel_mm=shape.travel_mm,
            places=NodePlaces(node, key),
        )

    def _kind(self, name: str, shape: DeviceShape, key: TextNode, node: Node) -> str:
        """Return a device's kind: as written, or as the part or the built-in place decides it."""
        if shape.kind is not None:
            kinds = self._catalogue.kinds
            if shape.kind not in kinds:
                place = NodePlaces(node)["kind"]
                types = [port.type for port in shape.port or () if port.label]
                self._faults.append(unknown_kind(shape.kind, place, kinds, *types[:1]))
            return shape.kind
        part = self._catalogue.parts.get(shape.part or "")
        decided = (part and part.kind) or self._built_in_kind(shape.port or ())
        if decided:
            return decided
        if {"kind", ""} & node.spoilt:
            return ""
        because = ""
        if shape.part is not None:
            why = "has no kind in the catalogue" if part else "is not in the catalogue"
            because = f", and its part `{shape.part}` {why}"
        message = wordings.missing_field(f"`{name}` has no `kind`{because}", "kind: motor", node)
        self._faults.append(Fault("missing-field", message, key.place, expected="kind"))
        return ""

    def _built_in_kind(self, ports: tuple[Port, ...]) -> str | None:
        for port in ports:
            controller = self._controllers.get(port.controller)
            board = self._catalogue.boards.get(controller.board) if controller else None
            if board and port.label is None and port.type in board.built_in:
                return board.built_in[port.type]
        return None
