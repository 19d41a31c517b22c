"""A small workspace on disk that tests of the operations change as they need."""

from __future__ import annotations

from pathlib import Path

import pytest

FILES = {
    "namegen.yaml": """\
robots: [robots/*.yaml]
catalogue: catalogue.yaml
names: {style: camelCase, longest: 24}
lookups:
  - {call: motor, kind: motor}
  - {call: servo, kind: servo}
code:
  - {path: code/heron, robots: [heron]}
build:
  - target: python-constants
    to: "code/{robot}/devices.py"
  - target: config-json
    to: "config/{robot}.json"
""",
    "catalogue.yaml": """\
boards:
  harbour:
    ports: {motor: 1-3, servo: 1-5, digital: 1-6}
""",
    "robots/heron.yaml": """\
robot: heron
controllers:
  bridge: {board: harbour}
devices:
  bowThruster: {kind: motor, port: bridge motor 1, formerly: [frontThruster]}
  sternThruster: {kind: motor, port: bridge motor 2}
  rudder: {kind: servo, port: bridge servo 1}
""",
    "code/heron/main.py": """\
def start(boat):
    bow = boat.motor("bowThruster")
    stern = boat.motor("sternThruster")
    return bow, stern, boat.servo("rudder")
""",
}


def lay(root: Path, files: dict[str, str]) -> Path:
    """Write files below a folder and return it."""
    for path, text in files.items():
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_bytes(text.encode())
    return root


@pytest.fixture
def boats(tmp_path: Path) -> Path:
    """A workspace with one boat, whose code is right and whose outputs are not yet built."""
    return lay(tmp_path / "boats", FILES)
