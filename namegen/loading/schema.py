"""The JSON Schemas of the YAML files, for editors."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from namegen.loading.shapes.shape import Shape

DIALECT = "https://json-schema.org/draft/2020-12/schema"
DOCUMENTS = ("manifest", "catalogue", "workspace")


def json_schema(document: str) -> dict[str, Any]:
    """Return the JSON Schema (2020-12) of ``manifest``, ``catalogue`` or ``workspace``.

    What only merging can tell is left open: a device in one file may get its port
    from another. Numbers and booleans are allowed where namegen reads text, because an
    editor's YAML reader has made them of the text already.

    Raises:
        KeyError: there is no such document.

    """
    from namegen.loading.shapes.catalogue import CatalogueShape
    from namegen.loading.shapes.manifest import ManifestShape
    from namegen.loading.shapes.shape import Shape
    from namegen.loading.shapes.workspace import WorkspaceShape

    shapes: dict[str, type[Shape]] = {
        "manifest": ManifestShape,
        "catalogue": CatalogueShape,
        "workspace": WorkspaceShape,
    }
    made = shapes[document].model_json_schema(by_alias=True)
    by_title = {shape.__name__: shape for shape in _all(Shape)}
    definitions = made.get("$defs", {})
    for title, definition in [(made["title"], made), *definitions.items()]:
        _finish(definition, by_title[title])
    made["title"] = f"namegen {document}"
    made["type"] = "object"
    return {"$schema": DIALECT, **made}


def _all(shape: type[Shape]) -> list[type[Shape]]:
    """Return all shapes below a shape."""
    return [one for below in shape.__subclasses__() for one in (below, *_all(below))]


def _finish(definition: dict[str, Any], shape: type[Shape]) -> None:
    """Make one shape's schema fit for an editor: required fields, clearing, no dead weight."""
    definition["type"] = ["object", "null"]
    definition["title"] = definition["title"].removesuffix("Shape")
    if shape.needed and not shape.in_parts:
        definition["required"] = list(shape.needed)
    if shape.exactly_one:
        definition["oneOf"] = [{"required": [field]} for field in shape.exactly_one]
    for field in definition["properties"].values():
        field.pop("default", None)
        field.pop("title", None)
