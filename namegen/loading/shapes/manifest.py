"""The shape of a manifest."""

from __future__ import annotations

from typing import Annotated

from pydantic import BeforeValidator, Field

from namegen.loading import values as v
from namegen.loading.scalars import wrong
from namegen.loading.shapes.shape import Shape


class AcceptShape(Shape):
    """The findings of one kind are right as they are, for a reason."""

    what = "an accepted finding"
    needed = ("finding", "because")
    finding: v.Text = Field(
        None,
        description="Kind of the finding, as the report names it.",
        examples=["port-undecided"],
    )
    because: v.Text = Field(
        None, description="Why the finding is right as it is.", examples=["the lamp comes in May"]
    )


class AcceptOfShape(AcceptShape):
    """The findings of one kind are right as they are, for a reason; perhaps for one device."""

    device: v.Text = Field(
        None, description="Only the findings about this device.", examples=["spareLamp"]
    )


class BatteryShape(Shape):
    """What feeds the robot."""

    what = "the battery"
    volts: v.AboveZero = Field(None, description="Nominal voltage in volts.", examples=[12.8])
    fuse_amps: v.AboveZero = Field(None, description="Main fuse in amperes.", examples=[15])
    wire_awg: v.Whole = Field(None, description="Gauge (AWG) of its thinnest wire.", examples=[14])


class ControllerShape(Shape):
    """A board of this robot that devices are plugged into."""

    what = "a controller"
    in_parts = True
    needed = ("board",)
    board: v.Text = Field(None, description="Its type in the catalogue.", examples=["harbour"])
    uplink: v.Uplink = Field(
        None,
        description="Port of another controller that this one is connected to.",
        examples=["bridge serial 1"],
    )
    address: v.Whole = Field(None, description="Its address on the uplink's bus.", examples=[0x42])
    dead: v.PortsHere = Field(
        None,
        description="Broken ports: hints skip them, using one is a finding.",
        examples=[["servo 2"]],
    )


class DeviceShape(Shape):
    """One thing with a name that programs look up."""

    what = "a device"
    in_parts = True
    needed = ("port",)
    kind: v.KindName = Field(
        None,
        description="What it is for a program. May be left out when the part or the built-in "
        "place decides it.",
        examples=["motor", "servo"],
    )
    port: v.Ports = Field(
        None,
        description="Where it is plugged in: controller, port type, label. Controller and label "
        "for a built-in device; a list when it uses several ports; `undecided` while it is not "
        "settled.",
        examples=["bridge motor 1", "bridge compass", "undecided"],
    )
    part: v.Text = Field(
        None, description="The bought item, by its name in the catalogue.", examples=["thruster-b"]
    )
    address: v.Whole = Field(None, description="Address on its bus.", examples=[0x3A])
    does: v.Text = Field(
        None, description="What it does on this robot.", examples=["Pushes the bow sideways"]
    )
    expect: v.Text = Field(
        None,
        description="What a person sees at the device test.",
        examples=["Bow moves to the right"],
    )
    note: v.Text = Field(
        None,
        description="Anything else that people should know.",
        examples=["red tape on the wire"],
    )
    reversed: v.Flag = Field(None, description="Whether it turns the other way round.")
    optional: v.Flag = Field(
        None, description="Whether programs start without it, with a warning only."
    )
    formerly: v.Texts = Field(
        None, description="Old names, newest first.", examples=[["frontThruster"]]
    )
    identifiers: v.TextMap = Field(
        None,
        description="Language -> the identifier that it shall have there.",
        examples=[{"java": "BOW_2"}],
    )
    travel_mm: v.AboveZero = Field(
        None,
        description="What one turn of the output shaft moves, in millimetres.",
        examples=[212.5],
    )
    accept: list[AcceptShape] | None = Field(
        None, description="Findings about this device that are right as they are."
    )


class ChangeShape(Shape):
    """What a setup changes about one device."""

    what = "a change of a device"
    port: v.Ports = Field(
        None, description="Where it is plugged in in this setup.", examples=["stern servo 1"]
    )
    part: v.Text = Field(
        None, description="Which part it is in this setup.", examples=["thruster-b"]
    )


class SetupShape(Shape):
    """A named selection of the devices."""

    what = "a setup"
    only: v.Texts = Field(
        None, description="The devices that belong to it; without it, all.", examples=[["rudder"]]
    )
    without: v.Texts = Field(
        None, description="The devices that do not belong to it.", examples=[["netWinch"]]
    )
    change: dict[str, ChangeShape] | None = Field(
        None,
        description="Device -> its port or part in this setup.",
        examples=[{"rudder": {"port": "stern servo 1"}}],
    )


def _setup(value: object) -> object:
    if value == "everything":
        return {}
    if value is None or not isinstance(value, dict):
        raise wrong("This is no setup.")  # `wordings` says it with the devices that there are
    return value


EVERYTHING = {"const": "everything", "description": "All devices belong to it."}
Setup = Annotated[SetupShape, BeforeValidator(_setup), v.OrText(EVERYTHING)]


class ManifestShape(Shape):
    """What one robot has: controllers, devices, setups."""

    what = "a manifest"
    needed = ("robot",)
    robot: v.Text = Field(None, description="Name of the robot.", examples=["heron"])
    title: v.Text = Field(
        None, description="Its name for people.", examples=["Heron, the pond skimmer"]
    )
    revision: v.Text = Field(
        None, description="State of the robot, free text for people.", examples=["2026 spring"]
    )
    includes: v.Texts = Field(
        None,
        description="Files of the same shape, merged first; paths start at this file's folder.",
        examples=[["../shared/hull.yaml"]],
    )
    drop: v.Texts = Field(
        None,
        description="Devices of the included files that are left out.",
        examples=[["spareLamp"]],
    )
    battery: BatteryShape | None = Field(None, description="What feeds the robot.")
    controllers: dict[str, ControllerShape] | None = Field(
        None, description="The boards that devices are plugged into, by name."
    )
    devices: dict[str, DeviceShape] | None = Field(
        None, description="The devices, by the name that programs look up."
    )
    setups: dict[str, Setup] | None = Field(
        None, description="Named selections of the devices; one is selected on the machine."
    )
    selected: v.Text = Field(
        None, description="The setup to select on the machine.", examples=["harvest"]
    )
    accept: list[AcceptOfShape] | None = Field(
        None, description="Findings that are right as they are."
    )
