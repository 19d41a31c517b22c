"""What the target config-csv writes, read back: the same manifest."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from namegen.loading.catalogue import read_catalogue
from namegen.loading.charts.catalogue_text import catalogue_text
from namegen.loading.charts.configuration import is_configuration, read_configuration
from namegen.loading.charts.manifest_text import manifest_text
from namegen.loading.charts.tables import tables_of
from namegen.loading.manifest import read_manifest
from namegen.model.manifests import Change, Device, Manifest, Port, Setup
from namegen.targets.rendering import render
from namegen.targets.scene import Scene
from namegen.targets.shelf import load
from targets.boats import CATALOGUE, HERON
from targets.strategies import hostile

WORDS = st.sampled_from(
    ["bridge", "stern", "motor", "i2c", "lin", "1", "B", "né", "=1", "'x", "a:b"]
)
PORT = st.builds(Port, WORDS, WORDS, st.none() | WORDS)
NAME = hostile(1)


@st.composite
def devices(draw: st.DrawFn) -> Device:
    one = Device(
        draw(NAME),
        draw(st.sampled_from(["motor", "servo", "net-winch", "'=kind"])),
        tuple(draw(st.lists(PORT, max_size=2))),
        draw(st.none() | NAME),
        draw(st.none() | st.integers(0, 0x3FF)),
        *(draw(hostile()) for _ in range(3)),
        *(draw(st.booleans()) for _ in range(2)),
    )
    former = draw(st.lists(NAME.filter(lambda name: ", " not in name), max_size=2))
    return replace(one, formerly=tuple(former))


@st.composite
def manifests(draw: st.DrawFn) -> Manifest:
    found = draw(st.lists(devices(), min_size=1, max_size=4, unique_by=lambda one: one.name))
    manifest = Manifest("robots/boat.yaml", "boat", {}, {one.name: one for one in found})
    names = list(manifest.devices)
    setups = {}
    for setup in draw(st.lists(NAME, max_size=3, unique=True)):
        without = tuple(name for name in names[1:] if draw(st.booleans()))
        change = {
            name: Change(draw(st.none() | st.just(()) | st.tuples(PORT)), draw(st.none() | NAME))
            for name in names
            if name not in without and draw(st.booleans())
        }
        setups[setup] = Setup(setup, without=without, change=change)
    selected = draw(st.sampled_from(list(setups))) if setups else None
    return replace(manifest, setups=setups, selected=selected)


def written(manifest: Manifest) -> str:
    return render(TARGET, Scene((manifest,), CATALOGUE, {}), "boat.csv").text


TARGET = load()["config-csv"]


def read_back(text: str) -> Manifest:
    """Return the manifest that the files made from the CSV give, which must be without fault."""
    table = tables_of(text.encode(), "boat.csv")[0]
    assert is_configuration(table)
    robot = read_configuration(table, "boat")
    assert robot.misfits == () and not any(placed.remarks for placed in robot.placed)
    catalogue = read_catalogue(catalogue_text([robot], "boat.csv").encode(), "catalogue.yaml")
    assert catalogue.value is not None
    yaml = manifest_text(robot, "boat.csv").encode()
    loaded = read_manifest("boat.yaml", lambda _: yaml, catalogue.value)
    spaced = [f for f in loaded.faults if "is one word" not in f.message]
    assert spaced == [] and loaded.value is not None, yaml.decode()
    return loaded.value


def as_data(device: Device) -> Device:
    return replace(device, places={}, identifiers={}, travel_mm=None)


@settings(
    max_examples=150, deadline=None, suppress_health_check=list(HealthCheck),
    phases=[Phase.explicit, Phase.generate, Phase.shrink],
)  # fmt: skip
@given(manifests())
def test_what_config_csv_carries_comes_back(manifest: Manifest):
    text = written(manifest)
    back = read_back(text)
    assert written(back) == text
    for setup in list(manifest.setups) or [None]:
        wanted = [as_data(device) for device in manifest.devices_in(setup)]
        assert [as_data(device) for device in back.devices_in(setup)] == wanted
    assert back.selected == manifest.selected


def test_heron_comes_back():
    back = read_back(written(HERON))
    assert list(back.setups) == ["harvest", "tank-test"]
    assert back.setups["tank-test"].without == ("netWinch",)
    assert back.setups["tank-test"].change["rudder"].ports == (Port("stern", "servo", "1"),)
    assert {n: as_data(d) for n, d in back.devices.items()} == {
        n: as_data(d) for n, d in HERON.devices.items()
    }


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (lambda row: row.replace("bridge motor 1", "motor"), "port"),
        (lambda row: row.replace("true,false", "yes,false"), "true or false"),
        (lambda row: row.replace("bowThruster", "", 1), "no name"),
        (lambda row: row + ",more", "one cell"),
    ],
)
def test_a_row_that_a_person_spoilt_is_listed(change: Callable[[str], str], why: str):
    head, row, *rest = written(replace(HERON, setups={}, selected=None)).splitlines()
    assert change(row) != row
    spoilt = "\n".join([head, change(row), *rest]) + "\n"
    robot = read_configuration(tables_of(spoilt.encode(), "boat.csv")[0], "boat")
    assert [misfit.line for misfit in robot.misfits] == [2]
    assert why in robot.misfits[0].why
    assert len(robot.placed) == len(HERON.devices) - 1
