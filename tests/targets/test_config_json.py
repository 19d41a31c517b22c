"""The JSON configuration, read by Python's json and held against its own schema."""

from __future__ import annotations

import json
import math

import jsonschema
import pytest

from namegen.bundled import bundled
from namegen.model.derived import derived_numbers
from namegen.model.manifests import Device, Manifest
from targets.boats import CATALOGUE

SCHEMA = json.loads((bundled("templates") / "config-json" / "config.schema.json").read_text())


def numbers_of(device: Device, volts: float | None) -> dict[str, float]:
    """Return what `namegen.model.derived` works out; its own tests hold that against sources."""
    numbers = derived_numbers(device, CATALOGUE.parts.get(device.part or ""), volts)
    return {one.name: one.value for one in numbers if math.isfinite(one.value)}


def as_written(device: Device, volts: float | None) -> dict[str, object]:
    return {
        "name": device.name,
        "kind": device.kind,
        "ports": [
            {"controller": port.controller, "type": port.type, "label": port.label}
            for port in device.ports
        ],
        "address": device.address,
        "part": device.part,
        "reversed": device.reversed,
        "optional": device.optional,
        "does": device.does,
        "expect": device.expect,
        "note": device.note,
        "formerly": list(device.formerly),
        "numbers": numbers_of(device, volts),
    }


def setups_of(manifest: Manifest) -> list[dict[str, object]]:
    volts = manifest.battery.volts if manifest.battery else None
    names: list[str | None] = list(manifest.setups) or [None]
    return [
        {
            "setup": name,
            "selected": name == manifest.selected,
            "devices": [as_written(device, volts) for device in manifest.devices_in(name)],
        }
        for name in names
    ]


def test_the_schema_itself_is_sound():
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_every_value_comes_back(make, hostile_robots):
    validator = jsonschema.Draft202012Validator(SCHEMA)
    for manifest in hostile_robots:
        read = json.loads(make("config-json", manifest))
        validator.validate(read)
        assert read["robot"] == manifest.robot
        assert read["title"] == manifest.title
        assert read["revision"] == manifest.revision
        assert read["selected"] == manifest.selected
        assert read["setups"] == setups_of(manifest)


def test_the_schema_refuses_what_is_no_configuration(make):
    read = json.loads(make("config-json"))
    for path, value in (("sheet_mark", "O0"), ("robot", None), ("setups", []), ("extra", 1)):
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate({**read, path: value}, SCHEMA)


def test_nothing_invisible_is_written(make, hostile_robots):
    for manifest in hostile_robots:
        text = make("config-json", manifest)
        assert all(char.isprintable() or char == "\n" for char in text)
