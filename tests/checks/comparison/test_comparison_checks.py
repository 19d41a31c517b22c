"""One action of a hand is one finding: moved, exchanged, renamed, mistyped, left out, selected."""

from __future__ import annotations

import importlib
import pkgutil

import pytest

from namegen import checks
from namegen.checks import comparison
from namegen.checks.comparison.matching import matched
from namegen.loading.as_found import read_as_found
from namegen.loading.catalogue import NO_CATALOGUE
from namegen.loading.manifest import read_manifest
from namegen.model.findings import Finding, Severity
from namegen.model.manifests import Manifest
from namegen.model.views import ComparisonView, Side

KNOWN = frozenset({"kind", "port", "part", "address", "reversed", "optional"})
MODULES = [
    importlib.import_module(f"{comparison.__name__}.{found.name}")
    for found in pkgutil.iter_modules(comparison.__path__)
]
KINDS = [module.KIND for module in MODULES if hasattr(module, "KIND")]
HEAD = "robot: heron\ncontrollers:\n  bridge: {board: harbour}\n  stern: {board: tender}\n"
SETUPS = "setups:\n  harvest: everything\n  tank-test: {without: [netWinch]}\n"


def manifest(text: str, path: str) -> Manifest:
    head = "robot: heron\n" if "controllers:" in text else HEAD
    loaded = read_manifest(path, lambda _: (head + text).encode(), NO_CATALOGUE)
    assert loaded.value is not None and not loaded.faults, loaded.faults
    return loaded.value


def of_manifest(text: str, label: str) -> Side:
    found = manifest(text, label)
    return Side(label, tuple(found.devices.values()), KNOWN, found)


def of_list(text: str) -> Side:
    found = read_as_found(text.encode(), "found.csv")
    return Side("found.csv", found.devices, found.known)


def as_manifest(rows: str) -> str:
    """Return rows of a list as the devices of a manifest."""
    lines = [row.split(",") for row in rows.splitlines() if not row.startswith("name,")]
    return "devices:\n" + "".join(
        f"  {name}: {{kind: {kind}, port: {port}}}\n" for name, kind, port in lines
    )


def found(view: ComparisonView) -> list[Finding]:
    return [finding for check in checks.comparison_checks() for finding in check(view)]


def between(before: str, after: str) -> list[Finding]:
    """Compare two manifests."""
    return found(matched(of_manifest(before, "old.yaml"), of_manifest(after, "new.yaml")))


def on_machine(rows: str, listed: str) -> list[Finding]:
    """Compare a manifest with a list; both are given as rows."""
    titles = "" if listed.startswith("name") else "name,kind,port\n"
    return found(matched(of_manifest(as_manifest(rows), "heron.yaml"), of_list(titles + listed)))


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_the_examples(kind):
    flagged, mended = kind.example.flagged, kind.example.mended
    if "," in flagged and "{" not in flagged:
        told, silent = on_machine(mended, flagged), on_machine(mended, mended)
    else:
        if kind.name == "other-setup":
            flagged, mended = SETUPS + flagged, SETUPS + mended
        told, silent = between(mended, flagged), between(mended, mended)
    assert [one.kind for one in told] == [kind.name]
    assert told[0].severity in {kind.severity, Severity.WARNING}
    assert silent == []


def test_there_are_examples_of_all_kinds_of_the_design():
    assert len(KINDS) == 13


ROW = (
    "a,motor,bridge motor 1\nb,motor,bridge motor 2\nc,motor,bridge motor 3\nd,motor,bridge motor 4"
)


@pytest.mark.parametrize(
    ("ports", "told"),
    [
        ("1234", []),
        ("2134", ["swapped"]),
        ("2143", ["swapped", "swapped"]),
        ("2314", ["rotated"]),
        ("4123", ["rotated"]),
        ("2345", ["moved"] * 4),  # a shift into a free port: each plug moved
        ("1235", ["moved"]),
        ("2135", ["moved", "swapped"]),
    ],
)
def test_plugs_that_sit_elsewhere_are_told_by_what_the_hand_did(ports: str, told: list[str]):
    listed = "\n".join(
        f"{name},motor,bridge motor {port}" for name, port in zip("abcd", ports, strict=True)
    )
    assert sorted(one.kind for one in on_machine(ROW, listed)) == told


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("bowthruster", "letter-case"),
        ("BowThruster", "letter-case"),
        ("b0wThruster", "look-alike"),
        ("bow Thruster", "look-alike"),
        ("bowThrutser", "misspelt"),
        ("bowThrster", "misspelt"),
        ("scoopWinch", "renamed"),
    ],
)
def test_another_name_at_the_same_port_is_one_finding(name: str, kind: str):
    rows = "bowThruster,motor,bridge motor 1\nrudder,servo,bridge servo 1"
    (one,) = on_machine(rows, rows.replace("bowThruster", name))
    assert (one.kind, one.found) == (kind, name)
    assert '"bowThruster"' in one.message


def test_a_slip_and_a_move_are_two_findings_about_one_device():
    told = on_machine("rudder,servo,bridge servo 1", "ruder,servo,bridge servo 2")
    assert [one.kind for one in told] == ["misspelt", "moved"]


def test_opposites_are_never_one_device():
    told = on_machine("bowLamp,lamp,bridge digital 1", "sternLamp,lamp,bridge digital 2")
    assert [one.kind for one in told] == ["extra", "missing"]


def test_a_list_of_names_alone_is_compared_by_names_alone():
    told = on_machine(ROW, "name\na\nb\nc\n")
    assert [(one.kind, one.found) for one in told] == [("missing", "d")]


def test_what_the_list_says_was_not_found_is_missing():
    told = on_machine(ROW, "name,found\na,yes\nb,yes\nc,no\nd,yes\n")
    assert [(one.kind, one.found) for one in told] == [("missing", "c")]


def test_an_optional_device_that_is_missing_is_a_note():
    text = "devices:\n  hatch: {kind: servo, port: bridge servo 1, optional: true}\n"
    (one,) = found(matched(of_manifest(text, "heron.yaml"), of_list("name\n")))
    assert (one.kind, one.severity) == ("missing", Severity.NOTE)


DEVICES = (
    "devices:\n  rudder: {kind: servo, port: stern servo 1}\n"
    "  lamp: {kind: lamp, port: stern digital 1}\n"
)
CONTROLLERS = "controllers:\n  bridge: {board: harbour}\n  stern: {board: tender}\n"


def test_a_renamed_controller_is_one_finding_and_moves_no_device():
    before = CONTROLLERS.replace("stern:", "stern: &", 0) + DEVICES
    after = before.replace("stern", "tiller")
    told = between(
        before.replace("{board: tender}", "{board: tender, uplink: bridge serial 1}"),
        after.replace("{board: tender}", "{board: tender, uplink: bridge serial 1}"),
    )
    assert [(one.kind, one.found) for one in told] == [("renamed", "tiller")]


def test_another_board_is_a_changed_part():
    (one,) = between(CONTROLLERS + DEVICES, CONTROLLERS.replace("tender", "harbour") + DEVICES)
    assert (one.kind, one.found) == ("part-changed", "stern")
    assert 'controller "stern" is board "harbour" in new.yaml' in one.message


def test_a_rename_that_the_manifest_knows_is_a_rename_wherever_it_is_plugged_in():
    before = "devices:\n  scoop: {kind: motor, port: bridge motor 1}\n"
    after = "devices:\n  netWinch: {kind: motor, port: bridge motor 2, formerly: [scoop]}\n"
    assert [one.kind for one in between(before, after)] == ["moved", "renamed"]


def test_between_manifests_a_difference_is_no_error():
    told = between(DEVICES, DEVICES.replace("rudder", "Rudder"))
    assert [(one.kind, one.severity) for one in told] == [("letter-case", Severity.WARNING)]


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("without: [netWinch]", "without: [lamp]", 'has "netWinch" and leaves out "lamp"'),
        ("tank-test", "trailer", 'no longer has setup "tank-test"'),
        (
            "harvest: everything",
            "harvest: {change: {lamp: {port: bridge digital 2}}}",
            'has another change of "lamp"',
        ),
    ],
)
def test_what_a_setup_holds_is_compared(old: str, new: str, told: str):
    text = (
        SETUPS
        + "selected: harvest\n"
        + DEVICES
        + "  netWinch: {kind: motor, port: bridge motor 3}\n"
    )
    findings = between(text, text.replace(old, new))
    assert {one.kind for one in findings} == {"other-setup"}
    assert any(told in one.message for one in findings)


def test_an_empty_cell_of_a_list_was_not_read():
    listed = "name,port,address\na,,\nb,bridge motor 4,\nc,,\nd,,\n"
    assert [(one.kind, one.found) for one in on_machine(ROW, listed)] == [("moved", "b")]
