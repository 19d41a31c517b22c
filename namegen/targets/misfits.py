"""Misfits: what keeps a target from making its file of a robot, told where it can be mended."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.errors import UnusableTarget
from namegen.model.findings import Fault
from namegen.model.places import Related
from namegen.targets.fields import unfit_fields
from namegen.targets.option import ByKind, Option
from namegen.targets.scene import Scene
from namegen.targets.target import Target


def misfits(target: Target, scene: Scene, path: str) -> Iterator[Fault]:
    """Yield everything that keeps a target from making the output that is to lie at ``path``.

    Nothing is rendered: options are held against what the target declares and
    against the kinds of the robot's devices, and fields against the language.
    A template that fails is its author's fault and no misfit.
    """
    for name in scene.options:
        if name not in target.options:
            error = target.unknown(name, "")
            yield Fault("unknown-field", _told(error), scene.place(name), found=name)
    for option in target.options.values():
        yield from _option_misfits(target, option, scene, path)
    yield from fields_that_cannot_be(target, scene, path)


def fields_that_cannot_be(target: Target, scene: Scene, path: str) -> Iterator[Fault]:
    """Yield each device whose field cannot stand in the target's code, if it has fields."""
    scheme = scene.terms(target, path).scheme
    if scheme is not None and target.fields is not None:
        for manifest in scene.manifests:
            yield from unfit_fields(manifest, scheme, target.name)


def _option_misfits(target: Target, option: Option, scene: Scene, path: str) -> Iterator[Fault]:
    """Yield what is wrong with an option, or each kind of the devices that it says nothing for."""
    given, place = scene.options.get(option.name), scene.place(option.name)
    if given is None and option.default is None:
        needs = f"Target {target.name} needs the option `{option.name}` under `with:`."
        yield Fault("missing-field", f"{needs} {option.help}", place)
        return
    try:
        setting = option.setting(given, f"target {target.name}", scene.terms(target, path))
    except UnusableTarget as error:
        found = given if isinstance(given, str) else None
        yield Fault("wrong-value", _told(error), place, found=found)
        return
    if not isinstance(setting, ByKind):
        return
    told: set[str] = set()
    for manifest in scene.manifests:
        for device in manifest.devices.values():
            if setting.has(device.kind) or device.kind in told or not device.kind:
                continue
            told.add(device.kind)
            where = device.places.get("kind") or device.places.get("")
            yield Fault(
                "missing-field",
                f"Target {target.name}, {setting.gap(device.kind)}",
                place,
                related=(Related(where, f'the kind of "{device.name}"'),) if where else (),
            )


def _told(error: UnusableTarget) -> str:
    """Return an error as the sentences of a finding."""
    text = f"{error.where}: {error.what}" if error.where else error.what
    return f"{text[:1].upper()}{text[1:]}. {error.remedy}"
