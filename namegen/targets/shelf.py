"""Finds targets: the bundled ones and the workspace's own, which have the same shape."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, get_args

from msgspec import Struct, field

from namegen.bundled import bundled
from namegen.errors import UnusableTarget
from namegen.model.places import Place
from namegen.targets import template_model
from namegen.targets.option import TYPES, Identifies, Option
from namegen.targets.schemes import FOLDER as LANGUAGES
from namegen.targets.schemes import naming_schemes
from namegen.targets.target import Target
from namegen.targets.yaml_file import BadDescription, YamlFile, named
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


class Shelf(Struct, frozen=True):
    """The targets by name, and those that cannot be used with the reason.

    One that cannot be used keeps nobody from the others.
    """

    targets: Mapping[str, Target]
    broken: Mapping[str, BadDescription] = field(default_factory=dict)


def load(folders: Sequence[Path] = ()) -> Mapping[str, Target]:
    """Return every target by name: the bundled ones, then those of the given folders.

    Raises:
        UnusableTarget: a folder does not exist, or one of the targets cannot be used.
    """
    found = shelf(folders)
    for fault in found.broken.values():
        raise fault
    return found.targets


def shelf(folders: Sequence[Path] = (), root: Path | None = None) -> Shelf:
    """Return the bundled targets and those of the given folders, whose paths begin at ``root``.

    Raises:
        UnusableTarget: a folder does not exist.
    """
    own = bundled("templates")
    targets: dict[str, Target] = {}
    broken: dict[str, BadDescription] = {}
    for folder in (own, *(folder for folder in folders if folder.resolve() != own.resolve())):
        if not folder.is_dir():
            raise UnusableTarget("is not a folder of targets", where=folder.name)
        for child in sorted(folder.iterdir()):
            if not child.is_dir() or child.name == LANGUAGES or child.name.startswith((".", "_")):
                continue
            try:
                target = read_target(child, root)
                if target.name in targets:
                    raise _twin(target)
            except BadDescription as fault:
                broken[child.name] = fault
            else:
                targets[target.name] = target
    return Shelf(targets, broken)


def _twin(target: Target) -> BadDescription:
    return BadDescription(
        f"there is a target {target.name} already",
        place=Place(target.shown),
        remedy="Give the folder another name.",
    )


def read_target(folder: Path, root: Path | None = None) -> Target:
    """Return the target that a folder describes; its name is the folder's.

    Raises:
        BadDescription: the description lacks something or says something unknown.
    """
    path = folder / "target.yaml"
    file = YamlFile(path, named(path, root))
    data = file.read(required=_REQUIRED, allowed=_ALLOWED)
    _check(data, file)
    return Target(
        name=folder.name,
        description=str(data["description"]),
        language=data.get("language"),
        per=data["per"],
        file=data.get("file") or "{robot}.txt",
        template=data["template"],
        folder=folder,
        escapes=tuple(data.get("escapes") or ()),
        shown=file.shown.rpartition("/")[0],
        fields=None if data.get("fields") is None else tuple(data["fields"]),
        options={
            str(name): _option(str(name), about, file)
            for name, about in (data.get("options") or {}).items()
        },
    )


def _check(data: Mapping[str, Any], file: YamlFile) -> None:
    """Refuse a description whose fields cannot mean anything."""
    version, model, folder = template_model.VERSION, data["model"], file.path.parent
    if model != version or isinstance(model, bool):
        newer = isinstance(model, int) and model > version
        remedy = f"Write `model: {version}`" + (", or get a newer namegen" if newer else "")
        raise file.fault(
            ["model"],
            f"model is {model!r}, this namegen offers {version}",
            f"{remedy}. `namegen explain target` tells what it has.",
        )
    for name, (fits, wanted) in _SHAPES.items():
        if data.get(name) is not None and not fits(data[name]):
            raise file.fault([name], f"{name} cannot be {data[name]!r}", f"Write {wanted}.")
    languages, language = naming_schemes(), data.get("language")
    if language is not None and language not in languages:
        raise _unknown("language", language, languages, file, ["language"])
    if data.get("fields") is not None and language is None:
        remedy = "Say in which `language` fields are."
        raise file.fault(["fields"], "fields wants a language", remedy)
    if not (folder / data["template"]).is_file():
        files = sorted(one.name for one in folder.iterdir() if one.name != "target.yaml")
        raise _unknown("file", data["template"], files, file, ["template"])


def _unknown(
    what: str,
    word: str,
    words: Iterable[str],
    file: YamlFile,
    keys: Sequence[str],
    lead: str = "",
) -> BadDescription:
    """Return what to say of a word that is none of those that there are."""
    near = nearest(word, words)
    return file.fault(
        keys,
        f'{lead}there is no {what} "{word}"' + (f'; did you mean "{near}"?' if near else ""),
        f"There is: {', '.join(words) or 'none'}.",
    )


def _option(name: str, about: object, file: YamlFile) -> Option:
    at, lead = ["options", name], f"option {name}: "
    if not isinstance(about, dict):
        remedy = "Write {type: text, help: what it is for}."
        raise file.fault(at, f"{lead}cannot be {about!r}", remedy)
    for key in about:
        if key not in _OPTION_KEYS:
            raise _unknown("field", str(key), _OPTION_KEYS, file, [*at, str(key)], lead)
    if about.get("type") not in list(TYPES):  # a list may be asked for anything
        raise _unknown("type", str(about.get("type")), TYPES, file, [*at, "type"], lead)
    default = about.get("default")
    option = Option(
        name=name,
        type=about["type"],
        help=str(about.get("help") or ""),
        default=tuple(default) if isinstance(default, list) else default,
        pattern=about.get("pattern"),
        identifies=about.get("identifies"),
    )
    key, complaint = _complaint(option)
    if complaint:
        raise file.fault([*at, key], lead + complaint)
    return option


def _complaint(option: Option) -> tuple[str, str]:
    """Return what is wrong with an option that no build entry could give, with its field."""
    if not option.help:
        return "help", "needs a help text: write `help: what it is for`"
    if option.default is not None and not option.fits(option.default):
        return "default", f"default is not a {option.type}: write one that is, or leave it out"
    if option.identifies not in (None, *get_args(Identifies)):
        return "identifies", "identifies is neither type nor other: write one of them"
    if option.identifies and (option.type != "text" or option.pattern is None):
        return (
            "identifies",
            "identifies wants a text with a pattern: write `type: text` and a `pattern`",
        )
    try:
        re.compile(option.pattern or "")
    except (re.error, TypeError) as error:
        return "pattern", f"pattern is no regular expression: {error}"
    return "", ""
