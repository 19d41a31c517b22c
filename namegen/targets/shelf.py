"""Finds targets: the bundled ones and the workspace's own, which have the same shape."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, get_args

from namegen.bundled import bundled
from namegen.errors import UnusableTarget
from namegen.targets import template_model
from namegen.targets.option import TYPES, Identifies, Option
from namegen.targets.schemes import FOLDER as LANGUAGES
from namegen.targets.schemes import naming_schemes
from namegen.targets.target import Target
from namegen.targets.yaml_file import read, shown

_REQUIRED = ("model", "description", "per", "template")
_ALLOWED = ("language", "file", "escapes", "options", "fields")
_OPTION_KEYS = ("type", "help", "default", "pattern", "identifies")


def load(folders: Sequence[Path] = ()) -> Mapping[str, Target]:
    """Return every target by name: the bundled ones, then those of the given folders.

    Raises:
        UnusableTarget: a target's description cannot be used, a folder does
            not exist, or a target bears the name of another one.
    """
    own = bundled("templates")
    targets: dict[str, Target] = {}
    for folder in (own, *(folder for folder in folders if folder.resolve() != own.resolve())):
        if not folder.is_dir():
            raise UnusableTarget("is not a folder of targets", where=folder.name)
        for child in sorted(folder.iterdir()):
            if not child.is_dir() or child.name == LANGUAGES or child.name.startswith((".", "_")):
                continue
            target = read_target(child)
            if target.name in targets:
                raise UnusableTarget(
                    f"there is a target {target.name} already",
                    where=shown(child),
                    remedy="Give the folder another name.",
                )
            targets[target.name] = target
    return targets


def read_target(folder: Path) -> Target:
    """Return the target that a folder describes; its name is the folder's.

    Raises:
        UnusableTarget: the description lacks something or says something unknown.
    """
    path = folder / "target.yaml"
    data = read(path, required=_REQUIRED, allowed=_ALLOWED)
    _check(data, folder, shown(path))
    return Target(
        name=folder.name,
        description=str(data["description"]),
        language=data.get("language"),
        per=data["per"],
        file=str(data.get("file", "{robot}.txt")),
        template=data["template"],
        folder=folder,
        escapes=tuple(data.get("escapes", ())),
        fields=None if data.get("fields") is None else tuple(data["fields"]),
        options={
            str(name): _option(str(name), about, shown(path))
            for name, about in (data.get("options") or {}).items()
        },
    )


def _check(data: Mapping[str, Any], folder: Path, where: str) -> None:
    """Refuse a description whose fields cannot mean anything."""
    languages, version = naming_schemes(), template_model.VERSION
    wrong = {
        f"model is {data['model']!r}, this namegen offers {version}": data["model"] != version,
        "per is neither robot nor workspace": data["per"] not in ("robot", "workspace"),
        f"language is none of {', '.join(languages)}": data.get("language") is not None
        and data["language"] not in languages,
        f"there is no file {data['template']}": not (folder / str(data["template"])).is_file(),
        "escapes is not a list": not isinstance(data.get("escapes", []), list),
        "fields is not a list of words, or there is no language": data.get("fields") is not None
        and (not isinstance(data["fields"], list) or data.get("language") is None),
        "options is not a mapping": not isinstance(data.get("options") or {}, dict),
    }
    for what, is_so in wrong.items():
        if is_so:
            raise UnusableTarget(what, where=where)


def _option(name: str, about: object, where: str) -> Option:
    where = f"{where}, option {name}"
    if not isinstance(about, dict) or set(about) - set(_OPTION_KEYS):
        raise UnusableTarget(f"has fields other than {', '.join(_OPTION_KEYS)}", where=where)
    default = about.get("default")
    option = Option(
        name=name,
        type=str(about.get("type")),
        help=str(about.get("help") or ""),
        default=tuple(default) if isinstance(default, list) else default,
        pattern=about.get("pattern"),
        identifies=about.get("identifies"),
    )
    if option.type not in TYPES or not option.help:
        raise UnusableTarget(f"needs a help text and a type of {', '.join(TYPES)}", where=where)
    if option.default is not None and not option.fits(option.default):
        raise UnusableTarget(f"default is not a {option.type}", where=where)
    if option.identifies not in (None, *get_args(Identifies)):
        raise UnusableTarget("identifies is neither type nor other", where=where)
    if option.identifies and (option.type != "text" or option.pattern is None):
        raise UnusableTarget("identifies wants a text with a pattern", where=where)
    try:
        re.compile(option.pattern or "")
    except (re.error, TypeError) as error:
        raise UnusableTarget(f"pattern is no regular expression: {error}", where=where) from error
    return option
