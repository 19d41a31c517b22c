"""Renders a target's template into the text of one file."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from namegen.errors import UnusableTarget
from namegen.model.artifacts import Artifact
from namegen.targets.escaping import escape
from namegen.targets.misfits import fields_that_cannot_be
from namegen.targets.prose import lines, sentence
from namegen.targets.scene import Scene
from namegen.targets.schemes import naming_schemes
from namegen.targets.staging import stage
from namegen.targets.target import Target
from namegen.targets.template_faults import template_fault
from namegen.targets.yaml_file import YamlFile

if TYPE_CHECKING:
    from namegen.targets.sandbox import Sandbox


def render(target: Target, scene: Scene, path: str) -> Artifact:
    """Return the file that a target makes of a scene, to lie at ``path`` in the workspace.

    The same scene gives the same text: no time, machine or version is in it.

    Raises:
        UnusableTarget: an option is wrong, or the template has a fault or puts
            out unescaped text; says the line of the template, target and robot.
    """
    scheme = naming_schemes()[target.language] if target.language else None
    robots = [stage(manifest, scene.catalogue, scheme) for manifest in scene.manifests]
    manifest = scene.manifests[0] if target.per == "robot" else None
    settings = target.settings(scene.options, path, scene.terms(target, path))
    for fault in fields_that_cannot_be(target, scene, path):
        raise UnusableTarget(fault.message, where=str(fault.place))
    data: dict[str, object] = {"options": settings}
    data |= {"robots": robots} if manifest is None else {"robot": robots[0]}
    robot = manifest.robot if manifest else None
    return Artifact(path, _text(target, data, robot), target.name, robot)


def _text(target: Target, data: Mapping[str, object], robot: str | None) -> str:
    try:
        environment = _environment(target.folder, target.escapes)
    except UnusableTarget as error:  # an escape that there is not
        file = YamlFile(target.folder / "target.yaml", f"{target.shown}/target.yaml")
        raise file.fault(["escapes"], error.what, error.remedy) from error
    try:
        text = environment.text_of(target.template, data)
        text.encode("utf-8")
    except Exception as error:  # a template can raise anything
        raise template_fault(error, target, robot, data) from error
    return text.rstrip("\n") + "\n"


@lru_cache(maxsize=64)
def _environment(folder: Path, escapes: tuple[str, ...]) -> Sandbox:
    """Return a sandbox that reads templates of one folder alone and compiles each once."""
    from jinja2 import FileSystemLoader

    from namegen.targets.sandbox import Nothing, Sandbox, finished

    environment = Sandbox(
        loader=FileSystemLoader(folder, encoding="utf-8-sig"),
        undefined=Nothing,
        finalize=finished,
        autoescape=False,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    for name in ("random", "shuffle", "lipsum"):  # would differ from run to run
        environment.filters.pop(name, None)
        environment.globals.pop(name, None)
    environment.filters |= {"lines": lines, "sentence": sentence}
    for name in escapes:
        environment.filters[name] = escape(name)
    return environment
