"""The shapes of the YAML files: which fields there are, what each may hold, what it is for.

pydantic checks a plain tree against them, and the JSON Schemas are made from
them. Every field may be cleared here; ``needed`` names those that must be there.
"""

from __future__ import annotations

from typing import Annotated, ClassVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator

from namegen.loading import values as v
from namegen.loading.scalars import text, wrong


class Shape(BaseModel):
    """A group of fields. Unknown ones are refused."""

    model_config = ConfigDict(extra="forbid", defer_build=True)

    what: ClassVar[str] = ""
    """What the group describes, as messages call it."""
    needed: ClassVar[dict[str, str]] = {}
    """Field that must be there -> a value it could have, as an example."""
    in_parts: ClassVar[bool] = False
    """Whether several files may give the fields together, so that one file may lack some."""
    exactly_one: ClassVar[tuple[str, ...]] = ()
    """Fields of which exactly one must be there."""

    @model_validator(mode="before")
    @classmethod
    def _cleared(cls, value: object) -> object:
        return {} if value is None else value


class AcceptShape(Shape):
    """The findings of one kind are right as they are, for a reason."""

    what = "an accepted finding"
    needed: ClassVar[dict[str, str]] = {
        "finding": "port-undecided",
        "because": "the lamp comes in May",
    }
    finding: v.Text = Field(None, description="Kind of the finding, as the report names it.")
    because: v.Text = Field(None, description="Why the finding is right as it is.")


class AcceptOfShape(AcceptShape):
    """The findings of one kind are right as they are, for a reason; perhaps for one device."""

    device: v.Text = Field(None, description="Only the findings about this device.")


class BatteryShape(Shape):
    """What feeds the robot."""

    what = "the battery"
    volts: v.Amount = Field(None, description="Nominal voltage in volts.", examples=[12.8])
    fuse_amps: v.Amount = Field(None, description="Main fuse in amperes.", examples=[15])
    wire_awg: v.Whole = Field(None, description="Gauge (AWG) of its thinnest wire.", examples=[14])


class ControllerShape(Shape):
    """A board of this robot that devices are plugged into."""

    what = "a controller"
    in_parts = True
    needed: ClassVar[dict[str, str]] = {"board": "harbour"}
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
    needed: ClassVar[dict[str, str]] = {"port": "bridge motor 1"}
    kind: v.Text = Field(
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
    part: v.Text = Field(None, description="The bought item, by its name in the catalogue.")
    address: v.Whole = Field(None, description="Address on its bus.", examples=[0x3A])
    does: v.Text = Field(None, description="What it does on this robot.")
    expect: v.Text = Field(None, description="What a person sees at the device test.")
    note: v.Text = Field(None, description="Anything else that people should know.")
    reversed: v.Flag = Field(None, description="Whether it turns the other way round.")
    optional: v.Flag = Field(
        None, description="Whether programs start without it, with a warning only."
    )
    formerly: v.Texts = Field(None, description="Old names, newest first.")
    identifiers: v.TextMap = Field(
        None,
        description="Language -> the identifier that it shall have there.",
        examples=[{"java": "BOW_2"}],
    )
    travel_mm: v.Amount = Field(
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
    port: v.Ports = Field(None, description="Where it is plugged in in this setup.")
    part: v.Text = Field(None, description="Which part it is in this setup.")


class SetupShape(Shape):
    """A named selection of the devices."""

    what = "a setup"
    only: v.Texts = Field(None, description="The devices that belong to it; without it, all.")
    without: v.Texts = Field(None, description="The devices that do not belong to it.")
    change: dict[str, ChangeShape] | None = Field(
        None, description="Device -> its port or part in this setup."
    )


def _setup(value: object) -> object:
    if value == "everything":
        return {}
    if value is None or not isinstance(value, dict):
        raise wrong(
            "A setup is `everything`, or lists devices: `{only: [rudder]}` or "
            "`{without: [netWinch]}`."
        )
    return value


def _built_in(value: object) -> object:
    return {"kind": text(value)} if isinstance(value, str) else value


EVERYTHING = {"const": "everything", "description": "All devices belong to it."}
Setup = Annotated[SetupShape, BeforeValidator(_setup), v.OrText(EVERYTHING)]


class ManifestShape(Shape):
    """What one robot has: controllers, devices, setups."""

    what = "a manifest"
    needed: ClassVar[dict[str, str]] = {"robot": "heron"}
    robot: v.Text = Field(None, description="Name of the robot.", examples=["heron"])
    title: v.Text = Field(None, description="Its name for people.")
    revision: v.Text = Field(None, description="State of the robot, free text for people.")
    includes: v.Texts = Field(
        None,
        description="Files of the same shape, merged first; paths start at this file's folder.",
        examples=[["../shared/hull.yaml"]],
    )
    drop: v.Texts = Field(None, description="Devices of the included files that are left out.")
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
    selected: v.Text = Field(None, description="The setup to select on the machine.")
    accept: list[AcceptOfShape] | None = Field(
        None, description="Findings that are right as they are."
    )


class BuiltInShape(Shape):
    """A device that is part of a board."""

    what = "a built-in device"
    needed: ClassVar[dict[str, str]] = {"kind": "imu"}
    kind: v.Text = Field(None, description="Its kind.", examples=["imu"])
    bus: v.Bus = Field(
        None, description="Port of this board whose bus it occupies.", examples=["i2c 1"]
    )
    address: v.Whole = Field(None, description="Address that it occupies there.", examples=[0x28])


BuiltIn = Annotated[BuiltInShape, BeforeValidator(_built_in), v.OrText({"type": "string"})]


class BoardShape(Shape):
    """A type of controller."""

    what = "a board"
    ports: v.LabelsMap = Field(
        None,
        description="Port type -> the labels printed on the board: `1-3`, `[A, B, C]`.",
        examples=[{"motor": "1-3", "analog": ["A", "B", "C"]}],
    )
    built_in: dict[str, BuiltIn] | None = Field(
        None, description="Label of a built-in device -> its kind.", examples=[{"compass": "imu"}]
    )
    fuse_amps: v.Amount = Field(None, description="Fuse of the board in amperes.")
    port_amps: v.AmountMap = Field(
        None, description="Port type -> current that one port may give, in amperes."
    )
    port_volts: v.AmountMap = Field(None, description="Port type -> voltage of its ports.")


class PortTypeShape(Shape):
    """A sort of port."""

    what = "a port type"
    shared: v.Flag = Field(None, description="Whether several devices may be on one port.")


class KindShape(Shape):
    """What a device is for a program."""

    what = "a kind"
    port: v.Texts = Field(None, description="Port types it can be plugged into; without it, any.")
    address: v.Whole = Field(None, description="Its usual bus address.", examples=[0x3A])


class PartShape(Shape):
    """A bought item. Figures are the maker's; every one may be absent."""

    what = "a part"
    kind: v.Text = Field(None, description="Kind of the devices that use it.")
    port: v.Texts = Field(None, description="Port types it fits, where narrower than its kind.")
    volts: v.Amount = Field(None, description="Rated voltage in volts.")
    rated_amps: v.Amount = Field(None, description="Current at rated load in amperes.")
    stall_amps: v.Amount = Field(None, description="Current when held still, in amperes.")
    address: v.Whole = Field(None, description="Its bus address.", examples=[0x3A])
    gear: v.Amount = Field(None, description="Turns of the motor for one turn of the output.")
    encoder_cycles: v.Amount = Field(None, description="Cycles of one channel for each turn.")
    decoding: v.Whole = Field(None, description="Counts for each cycle: 1, 2 or 4.", examples=[4])
    encoder_on: v.Shaft = Field(None, description="The shaft that the encoder sits on.")
    no_load_rpm: v.Amount = Field(
        None, description="Output speed without load at `volts`, in turns per minute."
    )
    pulse_us: v.Pulse = Field(
        None,
        description="Shortest and longest pulse of a servo in microseconds.",
        examples=[[620, 2380]],
    )
    degrees: v.Amount = Field(None, description="Travel of a servo over all pulses, in degrees.")


class RulesShape(Shape):
    """What a season's rule book permits."""

    what = "the rules"
    allowed_parts: v.Texts = Field(None, description="Permitted parts; without it, every part.")
    at_most: v.WholeMap = Field(None, description="Kind -> most devices of it on one robot.")


class CatalogueShape(Shape):
    """Boards, kinds and parts that the robots share."""

    what = "a catalogue"
    boards: dict[str, BoardShape] | None = Field(None, description="Types of controllers.")
    port_types: dict[str, PortTypeShape] | None = Field(
        None, description="Sorts of ports beside the built-in ones."
    )
    kinds: dict[str, KindShape] | None = Field(
        None, description="Kinds of devices beside the built-in ones, or in their place."
    )
    parts: dict[str, PartShape] | None = Field(None, description="Bought items.")
    rules: RulesShape | None = Field(None, description="What the season permits.")


class NamesShape(Shape):
    """How device names are written."""

    what = "the rules for names"
    style: v.Style = Field(None, description="How words are joined; `any` permits every way.")
    longest: v.Whole = Field(None, description="Most letters of a name.", examples=[24])


class LookupShape(Shape):
    """Which places in code look a device up. One of call, new, annotation, subscript."""

    what = "a look-up"
    exactly_one = ("call", "new", "annotation", "subscript")
    call: v.Text = Field(None, description='Function or method: `anything.motor("...")`.')
    new: v.Text = Field(None, description='Class that is constructed: `Motor("...")`.')
    annotation: v.Text = Field(None, description='Annotation: `@Device("...")`.')
    subscript: v.Text = Field(None, description='What is subscripted: `motors["..."]`.')
    on: v.Text = Field(None, description="Last word of the receiver, where it matters.")
    name_at: v.Positions = Field(
        None,
        description="Position of the name among the arguments, from 0; a list; or `rest`.",
        examples=[0, [0, 1], "rest"],
    )
    name_key: v.Text = Field(None, description="Keyword under which the name may be given.")
    kind: v.Text = Field(None, description="Kind of the devices that it looks up.")
    kind_at: v.Position = Field(None, description="Position of the argument that says the kind.")
    kind_by: v.SaysKind = Field(None, description="Where else the code says the kind.")
    kinds: v.TextMap = Field(
        None,
        description="Last identifier of the type in code -> kind.",
        examples=[{"Motor": "motor"}],
    )
    languages: v.Texts = Field(None, description="Languages it holds for; without it, all.")


class CodeShape(Shape):
    """Code and the robots that it runs on."""

    what = "a code entry"
    needed: ClassVar[dict[str, str]] = {"path": "code/heron", "robots": "[heron]"}
    path: v.Text = Field(None, description="Folder or file.", examples=["code/heron"])
    robots: v.Texts = Field(None, description="Robots it runs on; names must exist on each.")
    setup: v.Text = Field(None, description="The setup it is for; without it, any.")
    exclude: v.Texts = Field(None, description="Globs of files that are left out.")


class BuildShape(Shape):
    """One sort of output."""

    what = "a build entry"
    needed: ClassVar[dict[str, str]] = {
        "target": "python-constants",
        "to": '"code/{robot}/devices.py"',
    }
    target: v.Text = Field(None, description="Which sort of output.")
    to: v.Text = Field(
        None,
        description="Where it goes; `{robot}` and `{Robot}` stand for the robot's name. "
        "Put quotes around it.",
        examples=["code/{robot}/devices.py"],
    )
    robots: v.Texts = Field(None, description="Robots it is made for; without it, all.")
    options: v.OptionMap = Field(
        None,
        alias="with",
        description="Options that the target declares.",
        examples=[{"package": "club.boats"}],
    )


class WorkspaceShape(Shape):
    """The workspace: robots, code, look-ups, outputs."""

    what = "a workspace"
    needed: ClassVar[dict[str, str]] = {"robots": "[robots/*.yaml]"}
    robots: v.Texts = Field(None, description="The manifests, as paths or globs.")
    catalogue: v.Text = Field(None, description="The catalogue's file.")
    names: NamesShape | None = Field(None, description="How device names are written.")
    lookups: list[LookupShape] | None = Field(None, description="How code looks devices up.")
    code: list[CodeShape] | None = Field(None, description="Where code is and what it runs on.")
    build: list[BuildShape] | None = Field(None, description="Outputs to make.")
    templates: v.Text = Field(None, description="Folder with targets of the workspace's own.")
