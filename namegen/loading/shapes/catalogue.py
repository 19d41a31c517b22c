"""The shape of a catalogue."""

from __future__ import annotations

from typing import Annotated

from pydantic import BeforeValidator, Field

from namegen.loading import values as v
from namegen.loading.scalars import text
from namegen.loading.shapes.shape import Shape


class BuiltInShape(Shape):
    """A device that is part of a board."""

    what = "a built-in device"
    needed = ("kind",)
    kind: v.KindName = Field(None, description="Its kind.", examples=["imu"])
    bus: v.Bus = Field(
        None, description="Port of this board whose bus it occupies.", examples=["i2c 1"]
    )
    address: v.Whole = Field(None, description="Address that it occupies there.", examples=[0x28])


def _built_in(value: object) -> object:
    return {"kind": text(value)} if isinstance(value, str) else value


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
    fuse_amps: v.AboveZero = Field(None, description="Fuse of the board in amperes.", examples=[15])
    port_amps: v.AmountMap = Field(
        None,
        description="Port type -> current that one port may give, in amperes.",
        examples=[{"motor": 7}],
    )
    port_volts: v.AmountMap = Field(
        None, description="Port type -> voltage of its ports.", examples=[{"digital": 3.3}]
    )


class PortTypeShape(Shape):
    """A sort of port."""

    what = "a port type"
    shared: v.Flag = Field(None, description="Whether several devices may be on one port.")


class KindShape(Shape):
    """What a device is for a program."""

    what = "a kind"
    port: v.PortTypes = Field(
        None,
        description="Port types it can be plugged into; without it, any.",
        examples=[["digital", "servo"]],
    )
    address: v.Whole = Field(None, description="Its usual bus address.", examples=[0x3A])


class PartShape(Shape):
    """A bought item. Figures are the maker's; every one may be absent."""

    what = "a part"
    kind: v.KindName = Field(
        None, description="Kind of the devices that use it.", examples=["motor"]
    )
    port: v.PortTypes = Field(
        None,
        description="Port types it fits, where narrower than its kind.",
        examples=[["digital"]],
    )
    volts: v.AboveZero = Field(None, description="Rated voltage in volts.", examples=[12])
    rated_amps: v.Amount = Field(
        None, description="Current at rated load in amperes.", examples=[2.2]
    )
    stall_amps: v.Amount = Field(
        None, description="Current when held still, in amperes.", examples=[6.0]
    )
    address: v.Whole = Field(None, description="Its bus address.", examples=[0x3A])
    gear: v.AboveZero = Field(
        None, description="Turns of the motor for one turn of the output.", examples=[27]
    )
    encoder_cycles: v.AboveZero = Field(
        None, description="Cycles of one channel for each turn.", examples=[12]
    )
    decoding: v.Decoding = Field(
        None, description="Counts for each cycle: 1, 2 or 4.", examples=[4]
    )
    encoder_on: v.Shaft = Field(None, description="The shaft that the encoder sits on.")
    no_load_rpm: v.AboveZero = Field(
        None,
        description="Output speed without load at `volts`, in turns per minute.",
        examples=[140],
    )
    pulse_us: v.Pulse = Field(
        None,
        description="Shortest and longest pulse of a servo in microseconds.",
        examples=[[620, 2380]],
    )
    degrees: v.AboveZero = Field(
        None, description="Travel of a servo over all pulses, in degrees.", examples=[265]
    )


class RulesShape(Shape):
    """What a season's rule book permits."""

    what = "the rules"
    allowed_parts: v.Texts = Field(
        None, description="Permitted parts; without it, every part.", examples=[["thruster-b"]]
    )
    at_most: v.WholeMap = Field(
        None, description="Kind -> most devices of it on one robot.", examples=[{"motor": 5}]
    )


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
