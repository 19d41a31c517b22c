"""Every field that must be there has something that could stand in it."""

from __future__ import annotations

import pytest

from namegen.loading.anatomy import shapes_within
from namegen.loading.document import document
from namegen.loading.examples import Examples
from namegen.loading.shapes.catalogue import CatalogueShape
from namegen.loading.shapes.manifest import ManifestShape
from namegen.loading.shapes.workspace import WorkspaceShape


@pytest.mark.parametrize("outermost", [ManifestShape, CatalogueShape, WorkspaceShape])
def test_each_needed_field_has_an_example(outermost):
    tree, _ = document(b"robot: otter", "robots/otter.yaml")
    needed = [(shape, field) for shape in shapes_within(outermost) for field in shape.needed]
    assert needed
    assert all(Examples(tree).value(shape, field) for shape, field in needed)
    assert Examples(tree).value(ManifestShape, "robot") == "otter"
