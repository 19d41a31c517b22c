"""Times rendering: 200 robots by 5 targets, and the same templates with bare Jinja2.

Run with ``python tests/bench/rendering.py``. The bare run has the data staged already and neither
sandbox nor check of what is put out, so the ratio is the price of those.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

from msgspec.structs import replace

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from targets.boats import CATALOGUE, HERON

from namegen.targets import rendering, schemes, staging
from namegen.targets.escaping import escape
from namegen.targets.scene import Scene
from namegen.targets.shelf import load

NAMES = ("python-constants", "java-constants", "config-json", "config-csv", "sheet-markdown")
ROBOTS = [replace(HERON, robot=f"heron{i}", path=f"robots/heron{i}.yaml") for i in range(200)]


def namegen() -> float:
    """Return the CPU seconds of rendering everything, loading the targets included."""
    start = time.process_time()
    found = load()
    for name in NAMES:
        for robot in ROBOTS:
            scene = Scene((robot,), CATALOGUE)
            rendering.render(found[name], scene, f"{robot.robot}Devices.java")
    return time.process_time() - start


def bare() -> float:
    """Return the CPU seconds that Jinja2 alone needs for the same templates."""
    from jinja2 import Environment, FileSystemLoader

    from namegen.targets.prose import lines, sentence

    found, spellings, jobs = load(), schemes.naming_schemes(), []
    for name in NAMES:
        target = found[name]
        environment = Environment(
            loader=FileSystemLoader(target.folder), trim_blocks=True, lstrip_blocks=True
        )
        environment.filters |= {"lines": lines, "sentence": sentence}
        for one in target.escapes:
            environment.filters[one] = escape(one, target.name)
        template = environment.get_template(target.template)
        scheme = spellings.get(target.language or "")
        scene = Scene((HERON,), CATALOGUE)
        path = "HeronDevices.java"
        options = target.settings(scene.options, path, scene.terms(target, path))
        jobs.append((template, options, staging.stage(HERON, CATALOGUE, scheme)))
    start = time.process_time()
    for template, options, robot in jobs:
        for _ in ROBOTS:
            template.render(options=options, robot=robot)
    return time.process_time() - start


if __name__ == "__main__":
    ours, alone = namegen(), bare()
    print(f"namegen {ours:.2f} s CPU, Jinja2 alone {alone:.2f} s, ratio {ours / alone:.2f}")
