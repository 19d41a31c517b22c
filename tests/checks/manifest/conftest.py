"""A small world to judge manifests in: two boards, some parts, a style, two languages."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from namegen import checks
from namegen.checks.manifest import idle_acceptance
from namegen.loading.catalogue import NO_CATALOGUE, read_catalogue
from namegen.loading.manifest import read_manifest
from namegen.model.boards import Catalogue
from namegen.model.identifiers import NamingScheme
from namegen.model.views import RobotView
from namegen.model.workspaces import NameRules

CATALOGUE = """\
boards:
  harbour:
    ports: {motor: 1-3, servo: 1-5, digital: 1-6, analog: [A, B, C], i2c: 1-2, serial: 1-2,
            can: [1], lin: 1-2}
    fuse_amps: 15
    port_amps: {motor: 7}
    port_volts: {digital: 3.3}
  lookout:
    ports: {motor: 1-2, i2c: 1-3}
    built_in: {compass: {kind: imu, bus: i2c 1, address: 0x1C}}
  splitter:
    ports: {i2c: [A, B]}
port_types:
  lin: {shared: true}
kinds:
  lamp: {port: [digital, servo, lin]}
  row: {port: digital}
parts:
  thruster-b: {kind: motor, volts: 12, rated_amps: 2.2, stall_amps: 6}
  thruster-old: {kind: motor, volts: 12, rated_amps: 2, stall_amps: 5}
  winch-c: {kind: motor, volts: 12, rated_amps: 4, stall_amps: 6.5}
  winch-x: {kind: motor, volts: 12, rated_amps: 9.1, stall_amps: 11.5}
  pump-6v: {kind: motor, volts: 6, rated_amps: 1, stall_amps: 2}
  float-3v: {kind: level, volts: 3.3}
  float-5v: {kind: level, volts: 5}
  float-a: {kind: level, port: analog}
  ranger: {kind: distance, address: 0x3A}
rules:
  at_most: {lamp: 2}
"""
RULES = "  allowed_parts: [thruster-b, winch-c, pump-6v, float-3v, float-5v, float-a, ranger]\n"
SNIPPET_HEAD = {
    "robot:": "robot: heron\n",
    "controllers:": "controllers:\n  bridge: {board: harbour}\n",
}
SCHEMES = tuple(
    NamingScheme(
        language,
        "UPPER_SNAKE",
        "PascalCase",
        "camelCase",
        "[A-Za-z][A-Za-z0-9_]*",
        {"class": "a keyword", "Row": "a class of the generated file"},
    )
    for language in ("java", "python")
)
NAMES = NameRules("camelCase", 24)


def world(rules: bool = False) -> Catalogue:
    """Return the catalogue; with ``rules`` it has a list of allowed parts, without winch-x."""
    loaded = read_catalogue((CATALOGUE + RULES * rules).encode(), "catalogue.yaml")
    assert loaded.value is not None and not loaded.faults
    return loaded.value


def report(text: str, catalogue: Catalogue, names: NameRules = NAMES) -> list:
    """Return faults and findings; a robot and a controller are added where absent."""
    for key, lines in SNIPPET_HEAD.items():
        if not any(line.startswith(key) for line in text.splitlines()):
            text = lines + text
    loaded = read_manifest("robots/heron.yaml", lambda path: text.encode(), catalogue)
    found: list = list(loaded.faults)
    if loaded.value is not None:
        view = RobotView(loaded.value, catalogue, names, SCHEMES)
        judged = [one for check in checks.manifest_checks() for one in check(view)]
        found += [one for one in judged if not checks.accepted(one, loaded.value)]
        if not loaded.faults:
            found += idle_acceptance.idle(judged, loaded.value, "manifest")
    return sorted(found, key=lambda one: (one.place, one.kind))


@pytest.fixture
def judged() -> Callable[..., list]:
    """Judge a piece of a manifest: ``judged(text, rules=False, catalogue=True)``."""

    def judge(text: str, rules: bool = False, catalogue: bool = True, names=NAMES) -> list:
        return report(text, world(rules) if catalogue else NO_CATALOGUE, names)

    return judge
