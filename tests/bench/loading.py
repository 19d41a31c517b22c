"""Reads 300 manifests of 40 devices, beside PyYAML's C loader on the same texts.

    python tests/bench/loading.py

Prints CPU seconds and their ratio; ends with 1 when a bound is missed.
"""

from __future__ import annotations

import sys
import time

import yaml
from measuring import verdict

from namegen.loading.catalogue import NO_CATALOGUE
from namegen.loading.manifest import read_manifest

MANIFESTS, DEVICES = 300, 40


def text_of(robot: int) -> bytes:
    """Return a manifest with a normal share of every sort of field."""
    lines = [
        f"robot: boat{robot}",
        "title: A boat of the club",
        "battery: {volts: 12.8, fuse_amps: 15}",
        "controllers:",
        *(f"  {name}:\n    board: harbour" for name in ("bridge", "stern", "mast", "keel")),
        "devices:",
    ]
    for number in range(DEVICES):
        lines += [
            f"  device{number}:                # row {number}",
            "    kind: motor",
            f"    port: bridge motor {number}",
            "    part: thruster-b",
            "    does: Pushes the bow sideways",
            "    expect: Bow moves to the right",
        ]
        if number % 3 == 0:
            lines += ["    reversed: true", f"    formerly: [old{number}]"]
    lines += [
        "setups:",
        "  harvest: everything",
        "  tank-test: {without: [device3], change: {device4: {port: stern servo 1}}}",
        "selected: harvest",
        "",
    ]
    return "\n".join(lines).encode()


def main() -> int:
    """Measure both and print them."""
    texts = [text_of(robot) for robot in range(MANIFESTS)]
    began = time.process_time()
    for text in texts:
        loaded = read_manifest("boat.yaml", lambda _, text=text: text, NO_CATALOGUE)
        assert loaded.value is not None and len(loaded.value.devices) == DEVICES
        assert not loaded.faults
    own = time.process_time() - began
    began = time.process_time()
    for text in texts:
        yaml.load(text, Loader=yaml.CSafeLoader)
    plain = time.process_time() - began
    print(f"{MANIFESTS} manifests x {DEVICES} devices, {len(texts[0]):,} bytes each")
    print(f"namegen {own:.2f} s, yaml.load with CSafeLoader {plain:.2f} s of CPU")
    return verdict(
        [("CPU seconds for reading", own, 2.0), ("times plain yaml.load", own / plain, 2.5)]
    )


if __name__ == "__main__":
    sys.exit(main())
