"""Turns a manifest into the data that a template sees."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cached_property, lru_cache
from typing import Generic, TypeVar

from msgspec import Struct
from msgspec.structs import replace

from namegen.model.addresses import addressed
from namegen.model.boards import Board, Catalogue
from namegen.model.cautions import CAUTIONS
from namegen.model.derived import numbers_of
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Controller, Device, Manifest, Port
from namegen.model.sheet_mark import sheet_mark
from namegen.targets import template_model as shown
from namegen.targets.aliases import former_constants
from namegen.targets.spelling import spelling
from namegen.targets.unescaped import Unescaped

_EMPTY = Unescaped("")
_CAUTIONS = tuple(map(Unescaped, CAUTIONS))
T = TypeVar("T")


def stage(manifest: Manifest, catalogue: Catalogue, scheme: NamingScheme | None) -> shown.Robot:
    """Return one robot's template data, with the identifiers of a language where there is one.

    Boards, ports and parts that the manifest names but the catalogue lacks are
    shown as written: that they are missing is for the checks to say. Outputs of one
    robot in one language share the data, as long as they are rendered one after another.
    """
    return _stage_of(_Same(manifest), _Same(catalogue), _Same(scheme)).robot


class _Same(Struct, Generic[T], frozen=True, eq=False):
    """An object as a key that only itself equals: manifests are too large to compare."""

    one: T

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and self.one is other.one

    def __hash__(self) -> int:
        return id(self.one)


@lru_cache(maxsize=8)
def _stage_of(
    manifest: _Same[Manifest], catalogue: _Same[Catalogue], scheme: _Same[NamingScheme | None]
) -> _Stage:
    if scheme.one is None:
        return _Stage(manifest.one, catalogue.one)
    return _NamedStage(_stage_of(manifest, catalogue, _Same(None)), scheme.one)


class _Stage:
    """One robot's data under way, without any language's identifiers."""

    def __init__(self, manifest: Manifest, catalogue: Catalogue) -> None:
        manifest = addressed(manifest, catalogue)
        self.manifest = manifest
        self.catalogue = catalogue
        self.chosen = {device.name: device for device in manifest.devices_in()}
        """The devices of the selected setup, as they are wired there."""
        self.done: dict[int, tuple[Device, shown.Device]] = {}
        """Devices shown already, by identity: a setup that changes nothing shares them."""
        self.uplinks: dict[Port, list[Unescaped]] = {}
        for one in manifest.controllers.values():
            if one.uplink is not None:
                self.uplinks.setdefault(one.uplink, []).append(Unescaped(one.name))

    @cached_property
    def robot(self) -> shown.Robot:
        manifest = self.manifest
        devices = tuple(
            self.device(self.chosen.get(name, device)) for name, device in manifest.devices.items()
        )
        known = {Unescaped(name) for name in manifest.controllers}
        return shown.Robot(
            name=Unescaped(manifest.robot),
            type_name=self.type_name(manifest.robot),
            title=Unescaped(manifest.title),
            revision=Unescaped(manifest.revision),
            manifest=Unescaped(manifest.path),
            mark=self.mark,
            selected=Unescaped(manifest.selected or ""),
            kinds=self.kinds(devices),
            devices=devices,
            undecided=tuple(one for one in devices if one.undecided and one.selected),
            elsewhere=tuple(
                one
                for one in devices
                if one.selected and any(port.controller not in known for port in one.ports)
            ),
            cautions=_CAUTIONS,
            _parts=self,
        )

    @cached_property
    def mark(self) -> str:
        return sheet_mark(self.manifest)

    def type_name(self, text: str) -> str:
        return ""

    def device(self, device: Device) -> shown.Device:
        found = self.done.get(id(device))
        if found is None:
            found = self.done[id(device)] = (device, self.new_device(device))
        return found[1]

    def new_device(self, device: Device) -> shown.Device:
        ports = tuple(map(self.port, device.ports))
        return shown.Device(
            name=Unescaped(device.name),
            spelling=Unescaped(spelling(device.name)),
            kind=Unescaped(device.kind),
            kind_type="",
            constant="",
            field="",
            port=_wiring(device) if ports else _EMPTY,
            ports=ports,
            controller=ports[0].controller if ports else _EMPTY,
            label=ports[0].label if ports else _EMPTY,
            part=Unescaped(device.part or ""),
            address=_hex(device.address),
            address_number=device.address,
            does=Unescaped(device.does),
            expect=Unescaped(device.expect),
            note=Unescaped(device.note),
            reversed=device.reversed,
            optional=device.optional,
            undecided=device.undecided,
            built_in=any(port.label is None for port in device.ports),
            selected=device.name in self.chosen,
            formerly=tuple(map(Unescaped, device.formerly)),
            aliases=(),
            numbers=self.numbers(device) if device.part else (),
        )

    def numbers(self, device: Device) -> tuple[shown.Number, ...]:
        return tuple(
            shown.Number(
                name=one.name,
                constant="",
                value=float(one.value),
                text=_digits(one.value),
                says=one.says,
                formula=one.formula,
            )
            for one in numbers_of(device, self.manifest, self.catalogue)
        )

    def port(self, port: Port, dead: bool = False, devices: Iterable[Device] = ()) -> shown.Port:
        return shown.Port(
            controller=Unescaped(port.controller),
            type=Unescaped(port.type),
            label=Unescaped(port.label or ""),
            text=Unescaped(str(port)),
            dead=dead,
            uplink_of=tuple(self.uplinks.get(port, ())),
            devices=tuple(map(self.device, devices)),
        )

    def kinds(self, devices: Sequence[shown.Device]) -> tuple[shown.Kind, ...]:
        groups: dict[Unescaped, list[shown.Device]] = {}
        for device in devices:
            groups.setdefault(device.kind, []).append(device)
        return tuple(
            shown.Kind(
                name,
                members[0].kind_type,
                tuple(members),
                renamed=any(one.aliases for one in members),
            )
            for name, members in groups.items()
        )

    def controllers(self) -> tuple[shown.Controller, ...]:
        return tuple(map(self.controller, self.manifest.controllers.values()))

    def controller(self, controller: Controller) -> shown.Controller:
        board = self.catalogue.boards.get(controller.board) or Board(controller.board, {})
        used: dict[Port, list[Device]] = {}
        for device in self.chosen.values():
            for port in device.ports:
                if port.controller == controller.name:
                    used.setdefault(port, []).append(device)
        built_in = {label: Port(controller.name, label) for label in board.built_in}
        labelled = [port for port in used if port not in built_in.values()]
        return shown.Controller(
            name=Unescaped(controller.name),
            board=Unescaped(controller.board),
            uplink=Unescaped(str(controller.uplink or "")),
            address=_hex(controller.address),
            address_number=controller.address,
            groups=tuple(
                self.group(type_, ports, set(controller.dead), used)
                for type_, ports in _grouped(controller.name, board, labelled).items()
            ),
            built_in=tuple(
                shown.BuiltIn(
                    label=Unescaped(label),
                    kind=Unescaped(board.built_in[label]),
                    devices=tuple(map(self.device, used.get(port, ()))),
                )
                for label, port in built_in.items()
            ),
        )

    def group(
        self,
        type_: str,
        ports: Sequence[Port],
        dead: set[tuple[str, str]],
        used: dict[Port, list[Device]],
    ) -> shown.PortGroup:
        return shown.PortGroup(
            type=Unescaped(type_),
            ports=tuple(
                self.port(port, (type_, port.label or "") in dead, used.get(port, ()))
                for port in ports
            ),
        )

    def setups(self) -> tuple[shown.Setup, ...]:
        manifest = self.manifest
        if not manifest.setups:
            every = tuple(map(self.device, manifest.devices.values()))
            return (shown.Setup(_EMPTY, True, every, ()),)
        return tuple(
            shown.Setup(
                name=Unescaped(name),
                selected=name == manifest.selected,
                devices=tuple(map(self.device, manifest.devices_in(name))),
                differences=() if name == manifest.selected else self.differences(name),
            )
            for name in manifest.setups
        )

    def differences(self, setup: str) -> tuple[shown.Difference, ...]:
        there = {device.name: device for device in self.manifest.devices_in(setup)}
        steps = []
        for name in self.manifest.devices:
            before, after = self.chosen.get(name), there.get(name)
            if before is None and after is not None:
                steps.append(("plug in", after, _EMPTY, _wiring(after)))
            elif before is not None and after is None:
                steps.append(("unplug", before, _wiring(before), _EMPTY))
            elif before is not None and after is not None:
                if before.ports != after.ports:
                    steps.append(("move", after, _wiring(before), _wiring(after)))
                if before.part != after.part:
                    parts = Unescaped(before.part or ""), Unescaped(after.part or "")
                    steps.append(("change part", after, *parts))
        return tuple(
            shown.Difference(self.device(device), action, was, becomes)
            for action, device, was, becomes in steps
        )


class _NamedStage(_Stage):
    """One robot's data with the identifiers of a language, over the data without."""

    def __init__(self, plain: _Stage, scheme: NamingScheme) -> None:
        super().__init__(plain.manifest, plain.catalogue)
        self.plain = plain
        self.scheme = scheme
        self.former = former_constants(plain.manifest, scheme)

    @property
    def mark(self) -> str:
        return self.plain.mark

    def type_name(self, text: str) -> str:
        return self.scheme.type_name(text)

    def new_device(self, device: Device) -> shown.Device:
        scheme, plain = self.scheme, self.plain.device(device)
        return replace(
            plain,
            kind_type=scheme.type_name(device.kind),
            constant=scheme.constant(device),
            field=scheme.field_name(device),
            aliases=tuple(
                shown.Alias(Unescaped(name), constant)
                for name, constant in self.former.get(device.name, ())
            ),
            numbers=tuple(
                replace(one, constant=scheme.number(device, one.name)) for one in plain.numbers
            ),
        )


def _hex(address: int | None) -> str:
    return "" if address is None else f"0x{address:02X}"


def _digits(value: float) -> str:
    """Return a number with a point also before an exponent: YAML 1.1 wants it there."""
    digits, exponent, power = repr(float(value)).partition("e")
    return (digits if "." in digits else digits + ".0") + exponent + power


def _wiring(device: Device) -> Unescaped:
    return Unescaped(", ".join(map(str, device.ports)) or "undecided")


def _grouped(controller: str, board: Board, used: Iterable[Port]) -> dict[str, list[Port]]:
    """Return the board's ports by type in its own order, then used ones that it does not list."""
    groups = {
        type_: [Port(controller, type_, label) for label in labels]
        for type_, labels in board.ports.items()
    }
    for port in used:
        group = groups.setdefault(port.type, [])
        if port not in group:
            group.append(port)
    return groups
