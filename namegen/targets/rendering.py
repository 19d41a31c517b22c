"""Renders a target's template into the text of one file."""

from __future__ import annotations

import importlib
from collections.abc import Callable, Mapping
from functools import lru_cache
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING

from namegen.errors import UnusableTarget
from namegen.model.artifacts import Artifact
from namegen.targets.misfits import fields_that_cannot_be
from namegen.targets.prose import lines, sentence
from namegen.targets.scene import Scene
from namegen.targets.schemes import naming_schemes
from namegen.targets.staging import stage
from namegen.targets.target import Target
from namegen.targets.unescaped import Unescaped, raw

if TYPE_CHECKING:
    from jinja2 import Environment


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
    environment = _environment(target.folder, target.escapes)
    try:
        text = environment.get_template(target.template).render(data)
        text.encode("utf-8")
    except Exception as error:  # a template can raise anything
        for_robot = f", robot {robot}" if robot else ""
        raise UnusableTarget(
            f"target {target.name}{for_robot}: {_reason(error)}",
            where=_place(target, error),
        ) from error
    return text.rstrip("\n") + "\n"


@lru_cache(maxsize=64)
def _environment(folder: Path, escapes: tuple[str, ...]) -> Environment:
    """Return a sandbox that reads templates of one folder alone and compiles each once."""
    from jinja2 import FileSystemLoader, StrictUndefined

    from namegen.targets.sandbox import Sandbox, finished

    environment = Sandbox(
        loader=FileSystemLoader(folder),
        undefined=StrictUndefined,
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
        environment.filters[name] = _escape(name, folder)
    return environment


def _escape(name: str, folder: Path) -> Callable[[object], str]:
    """Return an escape as a filter that takes manifest text."""
    module, _, function = name.partition("_")
    try:
        found = getattr(importlib.import_module(f"namegen.targets.escapes.{module}"), function)
    except (ImportError, AttributeError, ValueError) as error:
        raise UnusableTarget(
            f"there is no escape {name}",
            where=f"{folder.name}/target.yaml",
            remedy="`namegen explain target` lists them.",
        ) from error
    return lambda value: found(raw(value) if isinstance(value, Unescaped) else value)


def _reason(error: Exception) -> str:
    message = getattr(error, "message", None) or str(error) or type(error).__name__
    return str(message)


def _place(target: Target, error: Exception) -> str:
    """Return the line of the template that raised, as far as it is known."""
    folder = target.folder.name
    line = getattr(error, "lineno", None)
    if line is not None:
        return f"{folder}/{getattr(error, 'name', None) or target.template}:{line}"
    last, frame = f"{folder}/{target.template}", error.__traceback__
    while frame is not None:
        last = _line(target, frame) or last
        frame = frame.tb_next
    return last


def _line(target: Target, frame: TracebackType) -> str | None:
    source = Path(frame.tb_frame.f_code.co_filename)
    if source.parent != target.folder:
        return None
    return f"{target.folder.name}/{source.name}:{frame.tb_lineno}"
