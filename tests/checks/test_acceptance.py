"""Which findings a manifest's acceptance covers."""

from __future__ import annotations

from msgspec.structs import replace

from namegen.checks.acceptance import accepted
from namegen.model.findings import Finding, Severity
from namegen.model.manifests import Acceptance, Change, Device, Manifest, Setup
from namegen.model.places import Place, Related

ROW, PORT, IN_SETUP, CODE = (Place("heron.yaml", line) for line in (5, 6, 20, 99))
LAMP = Device("spareLamp", "lamp", places={"": ROW, "port": PORT})
SETUP = Setup("tank", change={"spareLamp": Change(places={"": IN_SETUP})})


def manifest(*accepts: Acceptance) -> Manifest:
    devices = {"spareLamp": LAMP}
    return Manifest("heron.yaml", "heron", {}, devices, setups={"tank": SETUP}, accepts=accepts)


def finding(place: Place, severity: Severity = Severity.WARNING, **fields) -> Finding:
    return Finding("port-undecided", severity, "...", place, **fields)


ANYWHERE = Acceptance("port-undecided", "comes in May")
FOR_LAMP = Acceptance("port-undecided", "comes in May", device="spareLamp")


def test_an_acceptance_without_a_device_covers_its_kind():
    assert accepted(finding(CODE), manifest(ANYWHERE)) is ANYWHERE
    assert accepted(replace(finding(CODE), kind="name-style"), manifest(ANYWHERE)) is None


def test_an_acceptance_of_a_device_covers_its_row_and_its_change_in_a_setup():
    for place in (ROW, PORT, IN_SETUP):
        assert accepted(finding(place), manifest(FOR_LAMP)) is FOR_LAMP
    assert accepted(finding(CODE), manifest(FOR_LAMP)) is None


def test_an_acceptance_of_a_device_covers_what_points_at_its_row():
    numbered = replace(finding(CODE, found="216"), related=(Related(PORT, "follows from this"),))
    assert accepted(numbered, manifest(FOR_LAMP)) is FOR_LAMP
    elsewhere = replace(numbered, related=(Related(CODE, "follows from this"),))
    assert accepted(elsewhere, manifest(FOR_LAMP)) is None


def test_an_acceptance_of_a_device_covers_its_name_in_code():
    assert accepted(finding(CODE, found="spareLamp"), manifest(FOR_LAMP)) is FOR_LAMP
    assert accepted(finding(CODE, expected="spareLamp"), manifest(FOR_LAMP)) is FOR_LAMP
    assert accepted(finding(CODE, found="netWinch"), manifest(FOR_LAMP)) is None


def test_notes_are_accepted_and_errors_never():
    assert accepted(finding(ROW, Severity.NOTE), manifest(ANYWHERE)) is ANYWHERE
    assert accepted(finding(ROW, Severity.ERROR), manifest(ANYWHERE)) is None


def test_the_first_acceptance_that_fits_gives_the_reason():
    assert accepted(finding(ROW), manifest(FOR_LAMP, ANYWHERE)) is FOR_LAMP
