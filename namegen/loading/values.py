"""The types of single values for the shapes: a reader from ``scalars`` and a JSON Schema each."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any, TypeVar

from msgspec import Struct
from pydantic import BeforeValidator, GetJsonSchemaHandler, PlainValidator, WithJsonSchema
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from namegen.loading import ports, scalars
from namegen.model.boards import KINDS, PORT_TYPES
from namegen.model.manifests import Port
from namegen.model.workspaces import OptionValue

T = TypeVar("T")
Json = dict[str, Any]

# An editor's YAML reader sees numbers and booleans where namegen reads text.
TEXT: Json = {"type": ["string", "number", "boolean", "null"]}
ITEM: Json = {"type": ["string", "number", "boolean"]}
TEXTS: Json = {"anyOf": [TEXT, {"type": "array", "items": ITEM}]}


def _reader(read: Callable[[object], object]) -> PlainValidator:
    """Return a validator that leaves None (cleared) as it is."""
    return PlainValidator(lambda value: None if value is None else read(value))


def _listed(value: object) -> object:
    """Return a list where one text was written in its place."""
    return value if isinstance(value, list) or value is None else [value]


Text = Annotated[str | None, _reader(scalars.text), WithJsonSchema(TEXT)]
KindName = Annotated[
    str | None,
    _reader(scalars.text),
    WithJsonSchema({"anyOf": [{"enum": [*KINDS]}, TEXT]}),  # known ones to choose from
]
Item = Annotated[str, PlainValidator(scalars.text), WithJsonSchema(ITEM)]
Texts = Annotated[list[Item] | None, BeforeValidator(_listed), WithJsonSchema(TEXTS)]
_PORT_TYPE: Json = {"anyOf": [{"enum": [*PORT_TYPES]}, ITEM]}
PortTypes = Annotated[
    list[Item] | None,
    BeforeValidator(_listed),
    WithJsonSchema(
        {"anyOf": [_PORT_TYPE, {"type": "array", "items": _PORT_TYPE}, {"type": "null"}]}
    ),
]
TextMap = Annotated[
    dict[str, Item] | None,
    WithJsonSchema({"type": ["object", "null"], "additionalProperties": ITEM}),
]
Number = Annotated[
    float | None, _reader(scalars.number), WithJsonSchema({"type": ["number", "null"]})
]
_AMOUNT: Json = {"type": "number", "minimum": 0}
Amount = Annotated[
    float | None,
    _reader(scalars.amount),
    WithJsonSchema({"type": ["number", "null"], "minimum": 0}),
]
AboveZero = Annotated[
    float | None,
    _reader(scalars.above_zero),
    WithJsonSchema({"type": ["number", "null"], "exclusiveMinimum": 0}),
]
AmountItem = Annotated[float, PlainValidator(scalars.amount), WithJsonSchema(_AMOUNT)]
AmountMap = Annotated[
    dict[str, AmountItem] | None,
    WithJsonSchema({"type": ["object", "null"], "additionalProperties": _AMOUNT}),
]
Pulse = Annotated[
    tuple[float, float] | None,
    _reader(scalars.pulse),
    WithJsonSchema({"type": ["array", "null"], "items": _AMOUNT, "minItems": 2, "maxItems": 2}),
]
_WHOLE: Json = {"type": "integer", "minimum": 0}
Whole = Annotated[
    int | None,
    _reader(scalars.whole),
    WithJsonSchema({"type": ["integer", "null"], "minimum": 0}),
]
Decoding = Annotated[
    int | None,
    _reader(scalars.decoding),
    WithJsonSchema({"enum": [*scalars.DECODINGS, None]}),
]
WholeItem = Annotated[int, PlainValidator(scalars.whole), WithJsonSchema(_WHOLE)]
WholeMap = Annotated[
    dict[str, WholeItem] | None,
    WithJsonSchema({"type": ["object", "null"], "additionalProperties": _WHOLE}),
]
Flag = Annotated[bool | None, _reader(scalars.flag), WithJsonSchema({"type": ["boolean", "null"]})]
_PORT: Json = {"type": "string", "pattern": r"^\s*\S+(\s+\S+){1,2}\s*$|^undecided$"}
Ports = Annotated[
    tuple[Port, ...] | None,
    _reader(ports.ports),
    WithJsonSchema(
        {"anyOf": [_PORT, {"type": "array", "items": _PORT, "minItems": 1}, {"type": "null"}]}
    ),
]
Uplink = Annotated[
    Port | None, _reader(ports.uplink), WithJsonSchema({"anyOf": [_PORT, {"type": "null"}]})
]
_DEAD: Json = {"type": "string", "pattern": r"^\s*\S+\s+\S+\s*$"}
PortHere = Annotated[tuple[str, str], PlainValidator(ports.labelled), WithJsonSchema(_DEAD)]
PortsHere = Annotated[
    list[PortHere] | None,
    BeforeValidator(_listed),
    WithJsonSchema({"anyOf": [_DEAD, {"type": "array", "items": _DEAD}, {"type": "null"}]}),
]
Bus = Annotated[
    tuple[str, str] | None,
    _reader(ports.bus),
    WithJsonSchema({"anyOf": [_DEAD, {"type": "null"}]}),
]
_LABELS: Json = {
    "anyOf": [
        {"type": "string", "not": {"pattern": r"^\s*[0-9]+\s*$"}},
        {"type": "number", "not": {"type": "integer"}},
        {"type": "array", "items": {"type": ["string", "number"]}, "uniqueItems": True},
    ]
}
Labels = Annotated[tuple[str, ...], PlainValidator(ports.labels), WithJsonSchema(_LABELS)]
LabelsMap = Annotated[
    dict[str, Labels] | None,
    WithJsonSchema({"type": ["object", "null"], "additionalProperties": _LABELS}),
]
_POSITION: Json = {"type": "integer", "minimum": 0, "maximum": 99}
Position = Annotated[
    int | None,
    _reader(scalars.position),
    WithJsonSchema({"type": ["integer", "null"], "minimum": 0, "maximum": 99}),
]
Positions = Annotated[
    tuple[int, ...] | str | None,
    _reader(scalars.name_positions),
    WithJsonSchema(
        {
            "anyOf": [
                _POSITION,
                {"type": "array", "items": _POSITION, "minItems": 1},
                {"enum": ["rest", None]},
            ]
        }
    ),
]
_OPTION: Json = {
    "anyOf": [
        ITEM,
        {"type": "array", "items": ITEM},
        {"type": "object", "additionalProperties": ITEM},
    ]
}
Option = Annotated[OptionValue, PlainValidator(scalars.option), WithJsonSchema(_OPTION)]
OptionMap = Annotated[
    dict[str, Option] | None,
    WithJsonSchema({"type": ["object", "null"], "additionalProperties": _OPTION}),
]


class OrText(Struct, frozen=True):
    """Says in the JSON Schema that a text may stand in place of a group of fields."""

    instead: Any
    """JSON Schema of that text."""

    def __get_pydantic_json_schema__(
        self, core_schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"anyOf": [self.instead, handler(core_schema)]}


_STYLES = ("camelCase", "snake_case", "PascalCase", "kebab-case", "any")
Style = Annotated[
    str | None, _reader(scalars.choice(*_STYLES)), WithJsonSchema({"enum": [*_STYLES, None]})
]
_SHAFTS = ("motor", "output")
Shaft = Annotated[
    str | None, _reader(scalars.choice(*_SHAFTS)), WithJsonSchema({"enum": [*_SHAFTS, None]})
]
_SAYS_KIND = ("type-argument", "declared-type")
SaysKind = Annotated[
    str | None, _reader(scalars.choice(*_SAYS_KIND)), WithJsonSchema({"enum": [*_SAYS_KIND, None]})
]
