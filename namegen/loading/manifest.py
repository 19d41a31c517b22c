"""Reads a robot's manifest."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import PurePosixPath

from namegen.loading import wordings
from namegen.loading.inclusion import Inclusion
from namegen.loading.loaded import Loaded, listed
from namegen.loading.nodes import GroupNode, ListNode, Node, NodePlaces, TextNode
from namegen.loading.shapes import (
    AcceptShape,
    ControllerShape,
    DeviceShape,
    ManifestShape,
    SetupShape,
)
from namegen.loading.validation import Validated, validated
from namegen.model.boards import Catalogue
from namegen.model.findings import Fault
from namegen.model.manifests import (
    Acceptance,
    Battery,
    Change,
    Controller,
    Device,
    Manifest,
    Port,
    Setup,
)
from namegen.model.places import Place


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
    checked = validated(ManifestShape, inclusion.tree, complete=inclusion.complete)
    faults += checked.faults
    if not inclusion.complete:
        return Loaded(None, listed(faults))
    conversion = _Conversion(path, inclusion.tree, checked, catalogue)
    manifest = conversion.manifest(tuple(inclusion.sources))
    return Loaded(manifest, listed(faults + conversion.faults))


class _Conversion:
    """A valid tree -> the model, entry by entry."""

    def __init__(
        self,
        path: str,
        tree: GroupNode,
        checked: Validated[ManifestShape],
        catalogue: Catalogue,
    ) -> None:
        self.faults: list[Fault] = []
        self._path = path
        self._tree = tree
        self._shape = checked.shape
        self._spoilt = checked.spoilt
        self._catalogue = catalogue
        self._controllers: dict[str, Controller] = {}

    def manifest(self, sources: tuple[str, ...]) -> Manifest:
        shape = self._shape
        battery = self._tree.fields.get("battery")
        self._controllers = {
            name: self._controller(name, below) for name, below in (shape.controllers or {}).items()
        }
        devices = {name: self._device(name, below) for name, below in (shape.devices or {}).items()}
        setups = {name: self._setup(name, below) for name, below in (shape.setups or {}).items()}
        return Manifest(
            path=self._path,
            robot=shape.robot or PurePosixPath(self._path).stem,
            controllers=self._controllers,
            devices=devices,
            title=shape.title or "",
            revision=shape.revision or "",
            battery=Battery(
                shape.battery.volts,
                shape.battery.fuse_amps,
                shape.battery.wire_awg,
                NodePlaces(battery.value, battery.key),
            )
            if shape.battery and battery
            else None,
            setups=setups,
            selected=self._selected(setups),
            accepts=self._accepts(),
            sources=sources,
            places=NodePlaces(self._tree),
        )

    def _entry(self, group: str, name: str) -> tuple[TextNode, Node]:
        entries = self._tree.fields[group].value
        assert isinstance(entries, GroupNode)
        return entries.fields[name]

    def _controller(self, name: str, shape: ControllerShape) -> Controller:
        key, node = self._entry("controllers", name)
        if len(name.split()) != 1:
            message = (
                "A controller's name is one word, because a port is written as `bridge motor 1`. "
                f"Write it `{'-'.join(name.split()) or 'bridge'}`."
            )
            self.faults.append(Fault("wrong-value", message, key.place, name))
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
            if shape.kind not in self._catalogue.kinds:
                self._unknown_kind(shape.kind, node)
            return shape.kind
        part = self._catalogue.parts.get(shape.part or "")
        decided = (part and part.kind) or self._built_in_kind(shape.port or ())
        if decided:
            return decided
        if (id(node), "kind") in self._spoilt or (id(node), "") in self._spoilt:
            return ""
        because = ""
        if shape.part is not None:
            why = "has no kind in the catalogue" if part else "is not in the catalogue"
            because = f", and its part `{shape.part}` {why}"
        message = f"`{name}` has no `kind`{because}. Add a line to it such as `kind: motor`."
        self.faults.append(Fault("missing-field", message, key.place, expected="kind"))
        return ""

    def _unknown_kind(self, kind: str, node: Node) -> None:
        place = node.fields["kind"].value.place if isinstance(node, GroupNode) else node.place
        declare = (
            f"A kind of your own stands in the catalogue: `kinds: {{{kind}: {{port: digital}}}}`."
        )
        known = self._catalogue.kinds
        message = wordings.unknown_word(kind, "kind", known, declare)
        self.faults.append(
            Fault("wrong-value", message, place, kind, wordings.nearest(kind, known))
        )

    def _built_in_kind(self, ports: tuple[Port, ...]) -> str | None:
        for port in ports:
            controller = self._controllers.get(port.controller)
            board = self._catalogue.boards.get(controller.board) if controller else None
            if board and port.label is None and port.type in board.built_in:
                return board.built_in[port.type]
        return None

    def _setup(self, name: str, shape: SetupShape) -> Setup:
        key, node = self._entry("setups", name)
        if shape.only is not None and shape.without is not None:
            message = (
                "`only` and `without` exclude each other: `only` lists all that belong to the "
                "setup. Delete one of the two."
            )
            self.faults.append(Fault("wrong-value", message, key.place, name))
        changed = node.value("change") if isinstance(node, GroupNode) else None
        changes = {}
        for device, change in (shape.change or {}).items():
            assert isinstance(changed, GroupNode)
            entry = changed.fields[device]
            changes[device] = Change(change.port, change.part, NodePlaces(entry.value, entry.key))
        return Setup(
            name=name,
            only=None if shape.only is None else tuple(shape.only),
            without=tuple(shape.without or ()),
            change=changes,
            places=NodePlaces(node, key),
        )

    def _selected(self, setups: dict[str, Setup]) -> str | None:
        chosen = self._shape.selected
        if chosen is None:
            if len(setups) > 1 and (id(self._tree), "selected") not in self._spoilt:
                names = ", ".join(f"`{name}`" for name in setups)
                message = (
                    f"There are several setups ({names}), and no `selected` says which one is "
                    f"selected on the machine. Add a line `selected: {next(iter(setups))}`."
                )
                place = self._tree.fields["setups"].key.place
                self.faults.append(Fault("missing-field", message, place, expected="selected"))
            return next(iter(setups), None)
        if chosen in setups:
            return chosen
        close = wordings.nearest(chosen, setups)
        names = ", ".join(f"`{name}`" for name in setups) or "none"
        hint = f"Did you mean `{close}`?" if close else f"Setups of this robot: {names}."
        place = self._tree.fields["selected"].value.place
        message = f"There is no setup `{chosen}`. {hint}"
        self.faults.append(Fault("wrong-value", message, place, chosen, close))
        return next(iter(setups), None)

    def _accepts(self) -> tuple[Acceptance, ...]:
        found: list[Acceptance] = []
        node = self._tree.value("accept")
        for shape, place in _with_places(self._shape.accept, node):
            if shape.finding and shape.because:
                device = getattr(shape, "device", None)
                found.append(Acceptance(shape.finding, shape.because, device, place))
        for name, device_shape in (self._shape.devices or {}).items():
            if not device_shape.accept:
                continue
            below = self._entry("devices", name)[1]
            node = below.value("accept") if isinstance(below, GroupNode) else None
            for shape, place in _with_places(device_shape.accept, node):
                if shape.finding and shape.because:
                    found.append(Acceptance(shape.finding, shape.because, name, place))
        return tuple(found)


def _with_places(
    shapes: Sequence[AcceptShape] | None, node: Node | None
) -> list[tuple[AcceptShape, Place]]:
    """Return the entries of a list with their places."""
    items = node.items if isinstance(node, ListNode) else []
    return [(shape, item.place) for shape, item in zip(shapes or (), items, strict=False)]
