"""Finds targets: the bundled ones and the workspace's own, which have the same shape."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
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
from namegen.text.likeness import nearest

_REQUIRED = ("model", "description", "per", "template")
_ALLOWED = ("language", "file", "escapes", "options", "fields")
_OPTION_KEYS = ("type", "help", "default", "pattern", "identifies")


def _is_text(value: object) -> bool:
    return isinstance(value, str)


def _is_list_of_texts(value: object) -> bool:
    return isinstance(value, list) and all(map(_is_text, value))


_SHAPES: Mapping[str, tuple[Callable[[object], bool], str]] = {
    "per": (
        lambda value: value in ("robot", "workspace"),
        "`per: robot` for one file for each robot, or `per: workspace` for one file for all",
    ),
    "template": (_is_text, "the name of a template that lies beside target.yaml"),
    "language": (_is_text, "the name of one language, or leave the line out"),
    "file": (_is_text, 'a file name such as "{robot}.txt"'),
    "escapes": (_is_list_of_texts, "a list in brackets: `escapes: [plain_line]`"),
    "fields": (_is_list_of_texts, "a list of words in brackets, which may be empty: `fields: []`"),
    "options": (
        lambda value: isinstance(value, dict),
        "each option under its name: `options: {crew: {type: text, help: who sails}}`",
    ),
}
"""What each field of a description may be, and how to say so."""


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
        file=data.get("file") or "{robot}.txt",
        template=data["template"],
        folder=folder,
        escapes=tuple(data.get("escapes") or ()),
        fields=None if data.get("fields") is None else tuple(data["fields"]),
        options={
            str(name): _option(str(name), about, shown(path))
            for name, about in (data.get("options") or {}).items()
        },
    )


def _check(data: Mapping[str, Any], folder: Path, where: str) -> None:
    """Refuse a description whose fields cannot mean anything."""
    version, model = template_model.VERSION, data["model"]
    if model != version or isinstance(model, bool):
        newer = isinstance(model, int) and model > version
        remedy = f"Write `model: {version}`" + (", or get a newer namegen" if newer else "")
        raise UnusableTarget(
            f"model is {model!r}, this namegen offers {version}",
            where=where,
            remedy=f"{remedy}. `namegen explain target` tells what it has.",
        )
    for name, (fits, wanted) in _SHAPES.items():
        if data.get(name) is not None and not fits(data[name]):
            raise UnusableTarget(
                f"{name} cannot be {data[name]!r}", where=where, remedy=f"Write {wanted}."
            )
    languages, language = naming_schemes(), data.get("language")
    if language is not None and language not in languages:
        raise _unknown("language", language, languages, where)
    if data.get("fields") is not None and language is None:
        raise UnusableTarget(
            "fields wants a language", where=where, remedy="Say in which `language` fields are."
        )
    if not (folder / data["template"]).is_file():
        files = sorted(one.name for one in folder.iterdir() if one.name != "target.yaml")
        raise _unknown("file", data["template"], files, where)


def _unknown(what: str, word: str, words: Iterable[str], where: str) -> UnusableTarget:
    """Return what to say of a word that is none of those that there are."""
    near = nearest(word, words)
    return UnusableTarget(
        f'there is no {what} "{word}"' + (f'; did you mean "{near}"?' if near else ""),
        where=where,
        remedy=f"There is: {', '.join(words) or 'none'}.",
    )


def _option(name: str, about: object, where: str) -> Option:
    where = f"{where}, option {name}"
    if not isinstance(about, dict):
        raise UnusableTarget(
            f"cannot be {about!r}", where=where, remedy="Write {type: text, help: what it is for}."
        )
    for key in about:
        if key not in _OPTION_KEYS:
            raise _unknown("field", str(key), _OPTION_KEYS, where)
    if about.get("type") not in list(TYPES):  # a list may be asked for anything
        raise _unknown("type", str(about.get("type")), TYPES, where)
    default = about.get("default")
    option = Option(
        name=name,
        type=about["type"],
        help=str(about.get("help") or ""),
        default=tuple(default) if isinstance(default, list) else default,
        pattern=about.get("pattern"),
        identifies=about.get("identifies"),
    )
    _check_option(option, where)
    return option


def _check_option(option: Option, where: str) -> None:
    """Refuse an option that no build entry could give."""
    complaint = ""
    if not option.help:
        complaint = "needs a help text: what it is for, in a sentence"
    elif option.default is not None and not option.fits(option.default):
        complaint = f"default is not a {option.type}"
    elif option.identifies not in (None, *get_args(Identifies)):
        complaint = "identifies is neither type nor other"
    elif option.identifies and (option.type != "text" or option.pattern is None):
        complaint = "identifies wants a text with a pattern"
    if complaint:
        raise UnusableTarget(complaint, where=where)
    try:
        re.compile(option.pattern or "")
    except (re.error, TypeError) as error:
        raise UnusableTarget(f"pattern is no regular expression: {error}", where=where) from error
