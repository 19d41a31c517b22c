"""What is found between robots, and what is right and must stay silent. The robots are invented."""

from __future__ import annotations

import importlib
import pkgutil

import pytest

from namegen import checks
from namegen.checks import fleet
from namegen.loading.catalogue import NO_CATALOGUE
from namegen.loading.manifest import read_manifest
from namegen.model.findings import Finding
from namegen.model.manifests import Manifest
from namegen.model.views import FleetView

MODULES = [
    importlib.import_module(f"{fleet.__name__}.{found.name}")
    for found in pkgutil.iter_modules(fleet.__path__)
]
KINDS = [module.KIND for module in MODULES if hasattr(module, "KIND")]
CONTROLLERS = "controllers:\n  bridge: {board: harbour}\n"


def robot(text: str) -> Manifest:
    """Read one manifest; what it does not say of its controllers is one board."""
    text = text if "controllers:" in text else CONTROLLERS + text
    name = text.split("robot: ")[1].split("\n")[0]
    loaded = read_manifest(f"robots/{name}.yaml", lambda path: text.encode(), NO_CATALOGUE)
    assert loaded.value is not None and not loaded.faults, loaded.faults
    return loaded.value


def judged(*texts: str) -> list[Finding]:
    view = FleetView([robot(text) for text in texts])
    return [finding for check in checks.fleet_checks() for finding in check(view)]


def boat(name: str, *devices: str, more: str = "") -> str:
    return f"robot: {name}\n{more}devices:\n" + "".join(f"  {device}\n" for device in devices)


def found(*texts: str) -> list[tuple[str, str | None, str | None]]:
    """Return kind, robot and name of each finding."""
    return [(one.kind, one.robot, one.found) for one in judged(*texts)]


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_the_examples(kind):
    flagged = judged(*kind.example.flagged.split("---\n"))
    assert [one.kind for one in flagged] == [kind.name]
    assert judged(*kind.example.mended.split("---\n")) == []


def test_there_are_examples_of_all_kinds():
    assert sorted(kind.name for kind in KINDS) == [
        "same-name-other-kind",
        "same-name-other-port",
        "same-port-other-name",
        "spelling-differs",
    ]


RUDDER = "rudder: {kind: servo, port: bridge servo 1}"
ELSEWHERE = "rudder: {kind: servo, port: bridge servo 2}"


def test_the_robot_that_differs_from_most_is_told_whichever_comes_first():
    texts = boat("heron", ELSEWHERE), boat("dipper", RUDDER), boat("kingfisher", RUDDER)
    assert found(*texts) == [("same-name-other-port", "heron", "rudder")]
    (one,) = judged(*texts)
    assert "bridge servo 2 here and at bridge servo 1 on dipper and kingfisher" in one.message
    assert str(one.place) == "robots/heron.yaml:5:31"
    assert str(one.related[0].place) == "robots/dipper.yaml:5:31"


def test_of_two_the_first_is_the_pattern():
    assert found(boat("heron", RUDDER), boat("dipper", ELSEWHERE)) == [
        ("same-name-other-port", "dipper", "rudder")
    ]


@pytest.mark.parametrize(
    "other",
    [
        "rudder: {kind: servo, port: undecided}",
        "rudder: {kind: servo, port: stern servo 1}",  # a controller that heron lacks
    ],
)
def test_ports_are_compared_only_where_both_could_be_wired_alike(other: str):
    stern = "controllers:\n  bridge: {board: harbour}\n  stern: {board: harbour}\n"
    assert found(boat("heron", RUDDER), boat("dipper", other, more=stern)) == []


def test_ports_of_other_boards_are_not_compared():
    tender = "controllers:\n  bridge: {board: tender}\n"
    assert found(boat("heron", RUDDER), boat("dipper", ELSEWHERE, more=tender)) == []


def test_another_kind_is_told_once_and_its_port_not_at_all():
    lamp = "rudder: {kind: lamp, port: bridge digital 4}"
    texts = boat("heron", RUDDER), boat("dipper", lamp), boat("kingfisher", RUDDER)
    assert found(*texts) == [("same-name-other-kind", "dipper", "rudder")]
    assert "is a lamp here and a servo on heron and kingfisher" in judged(*texts)[0].message


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("netWinch", "netwinch"),
        ("netWinch", "net_winch"),
        ("netWinch", "netWnich"),
        ("reel0", "reelO"),
        ("bilgeLevel", "bilgeLevell"),
    ],
)
def test_a_name_in_two_spellings_is_told(one: str, other: str):
    port = "{kind: motor, port: bridge motor 1}"
    texts = boat("heron", f"{one}: {port}"), boat("dipper", f"{other}: {port}")
    assert found(*texts) == [("spelling-differs", "dipper", other)]
    assert judged(*texts)[0].expected == one


@pytest.mark.parametrize(
    ("one", "other"),
    [("bowLamp", "sternLamp"), ("lamp1", "lamp2"), ("lampA", "lampB"), ("leftFlap", "rightFlap")],
)
def test_opposites_and_series_are_no_spellings(one: str, other: str):
    texts = (
        boat("heron", f"{one}: {{kind: lamp, port: bridge digital 1}}"),
        boat("dipper", f"{other}: {{kind: lamp, port: bridge digital 2}}"),
    )
    assert found(*texts) == []


def test_two_near_names_on_one_robot_are_no_spellings_of_another():
    both = ("rudder: {kind: servo, port: bridge servo 1}", "ruder: {kind: servo, port: undecided}")
    assert found(boat("heron", *both), boat("dipper", RUDDER)) == []


def test_near_names_of_two_kinds_are_two_things():
    lamp = "ruder: {kind: lamp, port: bridge digital 1}"
    assert found(boat("heron", RUDDER), boat("dipper", lamp)) == []


WINCH = "netWinch: {kind: motor, port: bridge motor 3%s}"
HOIST = "scoopHoist: {kind: motor, port: bridge motor 3%s}"


@pytest.mark.parametrize(
    ("of_winch", "of_hoist", "told"),
    [
        ("", "", True),
        (", part: winch-m", ", part: winch-m", True),
        (", part: winch-m", ", part: cutter-r", False),
        (", does: Hauls the net in", "", True),
        (", does: Hauls the net in", ", does: Lifts the scoop", False),
    ],
)
def test_another_name_at_a_port_is_told_unless_it_is_another_thing(of_winch, of_hoist, told):
    texts = boat("heron", WINCH % of_winch), boat("dipper", HOIST % of_hoist)
    assert found(*texts) == [("same-port-other-name", "dipper", "scoopHoist")] * told


def test_who_knows_both_names_has_two_things():
    texts = boat("heron", WINCH % "", "scoopHoist: {kind: motor, port: undecided}")
    assert found(texts, boat("dipper", HOIST % "")) == []


def test_a_rename_on_one_robot_alone_is_told_as_such():
    renamed = HOIST % ", formerly: [netWinch]"
    (one,) = judged(boat("heron", WINCH % ""), boat("dipper", renamed))
    assert 'called "netWinch" here too, and was renamed on this robot alone' in one.message
    (one,) = judged(boat("dipper", renamed), boat("heron", WINCH % ""))
    assert 'called "netWinch" there too, and was renamed there alone' in one.message


def test_one_robot_has_nothing_to_differ_from():
    assert found(boat("heron", RUDDER)) == []


def test_of_many_robots_only_the_odd_name_at_a_port_is_told():
    texts = [boat(name, WINCH % "") for name in ("heron", "kingfisher", "grebe")]
    texts.insert(1, boat("dipper", HOIST % ""))
    assert found(*texts) == [("same-port-other-name", "dipper", "scoopHoist")]


def test_several_robots_do_and_one_does():
    odd, right = "netwinch: {kind: motor, port: bridge motor 1}", WINCH % ""
    (one,) = judged(boat("heron", right), boat("kingfisher", right), boat("dipper", odd))
    assert "spell it as heron and kingfisher do, everywhere" in one.message
    (one,) = judged(boat("heron", right), boat("dipper", odd))
    assert "spell it as heron does, everywhere" in one.message
