"""What the tests of the targets share."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from namegen import targets
from namegen.model.manifests import Manifest
from targets.boats import CATALOGUE, HERON
from targets.strategies import batch

Make = Callable[..., str]


@pytest.fixture(scope="session")
def make() -> Make:
    """Return a function that renders one robot: ``make("config-json", HERON, "x.json")``."""
    shelf = targets.load()

    def text_of(
        target: str, robot: Manifest = HERON, path: str = "out/HeronDevices", **options: object
    ) -> str:
        scene = targets.Scene((robot,), CATALOGUE, options)
        return targets.render(shelf[target], scene, path).text

    return text_of


@pytest.fixture(scope="session")
def hostile_robots() -> list[Manifest]:
    """Return robots with hostile text everywhere, new ones in each run."""
    return batch(60)
