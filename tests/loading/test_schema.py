"""Checked with the 2020-12 meta-schema through jsonschema, on what an editor's YAML reader sees."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any, ClassVar

import pytest
import yaml
from jsonschema import Draft202012Validator

from namegen.loading.schema import DOCUMENTS, json_schema


class Editor(yaml.SafeLoader):
    """Reads as editors do, by YAML 1.2: ``on`` is a text (common practice, no source)."""

    yaml_implicit_resolvers: ClassVar = {
        first: [one for one in found if one[0] != "tag:yaml.org,2002:bool"]
        for first, found in yaml.SafeLoader.yaml_implicit_resolvers.items()
    }


Editor.add_implicit_resolver("tag:yaml.org,2002:bool", re.compile("true|false"), ["t", "f"])


def valid(document: str, text: str) -> bool:
    schema = Draft202012Validator(json_schema(document))
    return schema.is_valid(yaml.load(text, Loader=Editor))


def properties(schema: Any) -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield each field of each group in a schema."""
    for group in [schema, *schema.get("$defs", {}).values()]:
        for name, field in group.get("properties", {}).items():
            yield f"{group['title']}.{name}", field


@pytest.mark.parametrize("document", DOCUMENTS)
def test_is_a_schema_of_2020_12(document):
    Draft202012Validator.check_schema(json_schema(document))


@pytest.mark.parametrize("document", DOCUMENTS)
def test_accepts_the_demo(document, documents):
    schema = Draft202012Validator(json_schema(document))
    assert list(schema.iter_errors(yaml.load(documents[document], Loader=Editor))) == []


@pytest.mark.parametrize("document", DOCUMENTS)
def test_every_field_is_described(document):
    schema = json_schema(document)
    assert schema["title"] == f"namegen {document}"
    bare = [name for name, field in properties(schema) if not field.get("description")]
    assert bare == []


@pytest.mark.parametrize("document", DOCUMENTS)
def test_every_single_value_shows_what_may_stand_there(document):
    schema = json_schema(document)
    bare = [name for name, field in properties(schema) if not shows(field)]
    assert bare == []


def shows(field: dict[str, Any]) -> bool:
    """Whether a field has an example or choices, is yes or no, or leads to fields of its own."""
    return bool(field.get("examples")) or any(
        sign in str(field) for sign in ("'enum'", "['boolean', 'null']", "$ref")
    )


@pytest.mark.parametrize("document", DOCUMENTS)
def test_examples_are_valid(document):
    schema = json_schema(document)
    for name, field in properties(schema):
        below = {**field, "$defs": schema.get("$defs", {})}
        for example in field.get("examples", ()):
            assert Draft202012Validator(below).is_valid(example), name


@pytest.mark.parametrize(
    ("document", "text"),
    [
        ("manifest", "robot: 7"),
        ("manifest", "robot: no"),
        ("manifest", "robot: a\ndevices: {b: {port: undecided, formerly: [1, on]}}"),
        ("manifest", "robot: a\nsetups: {s: {only: bow}}"),
        ("manifest", "robot: a\nincludes: b.yaml\ndevices: {bow: {port: x y, note: null}}"),
        ("manifest", "robot: a\nincludes: b.yaml\ndevices: {bow: {note: x}}"),
        ("catalogue", "boards: {h: {ports: {motor: [1, 2], analog: [A]}, built_in: {c: imu}}}"),
        ("catalogue", "boards: {h: {built_in: {c: {kind: imu, bus: i2c 1, address: 0x28}}}}"),
        ("catalogue", "kinds: {x: {}, net-winch: {port: [motor, lin]}}"),
        ("catalogue", "boards: {h: {ports: {motor: [1.1, 1.2], servo: 1.1}}}"),
        ("manifest", "robot: a\ndevices: {b: {port: undecided, kind: net-winch}}"),
        ("workspace", "robots: a.yaml\nlookups: [{call: x, name_at: [0, 1]}, {new: y}]"),
        ("workspace", "robots: a.yaml\nlookups: [{call: x, name_at: rest}]"),
    ],
)
def test_accepts_what_namegen_reads(document, text):
    assert valid(document, text)


@pytest.mark.parametrize(
    ("document", "text"),
    [
        ("manifest", "title: x"),
        ("manifest", "robot: a\ncolour: green"),
        ("manifest", "robot: a\ndevices: {bow: {port: bridge}}"),
        ("manifest", "robot: a\ndevices: {bow: bridge motor 1}"),
        ("manifest", "robot: a\nsetups: {s: all}"),
        ("manifest", "robot: a\ndevices: {bow: {port: x y, optional: maybe}}"),
        ("catalogue", "boards: {h: {ports: {motor: 3}}}"),
        ("catalogue", "boards: {h: {ports: {motor: [1, 2, 1]}}}"),
        ("manifest", "robot: a\ndevices: {b: {port: undecided, kind: [motor]}}"),
        ("catalogue", "parts: {p: {encoder_on: wheel}}"),
        ("catalogue", "parts: {p: {decoding: 3}}"),
        ("catalogue", "parts: {p: {gear: 0}}"),
        ("workspace", "catalogue: c.yaml"),
        ("workspace", "robots: a\nnames: {style: loud}"),
        ("workspace", "robots: a\nlookups: [{on: x}]"),
        ("workspace", "robots: a\nlookups: [{call: x, new: y}]"),
        ("workspace", "robots: a\nbuild: [{target: x}]"),
    ],
)
def test_refuses_what_namegen_refuses(document, text):
    assert not valid(document, text)


def test_an_unknown_document_is_an_error():
    with pytest.raises(KeyError):
        json_schema("chart")
