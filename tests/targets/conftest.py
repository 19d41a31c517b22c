"""What the tests of the targets share."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from namegen.model.manifests import Manifest
from namegen.targets.rendering import render
from namegen.targets.scene import Scene
from namegen.targets.shelf import load
from targets.boats import CATALOGUE, HERON
from targets.strategies import batch

Make = Callable[..., str]


@pytest.fixture(scope="session")
def make() -> Make:
    """Return a function that renders one robot: ``make("config-json", HERON, "x.json")``."""
    shelf = load()

    def text_of(
        target: str, robot: Manifest = HERON, path: str = "out/HeronDevices", **options: object
    ) -> str:
        scene = Scene((robot,), CATALOGUE, options)
        return render(shelf[target], scene, path).text

    return text_of


@pytest.fixture(scope="session")
def hostile_robots() -> list[Manifest]:
    """Return robots with hostile text everywhere, new ones in each run."""
    return batch(60)
