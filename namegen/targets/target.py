"""A target: one sort of output, described by the ``target.yaml`` of its folder."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Literal

from namegen.errors import UnusableTarget
from namegen.targets.unescaped import Unescaped

Value = str | bool | int
TYPES: Mapping[str, type] = {"text": str, "boolean": bool, "number": int}


@dataclass(frozen=True, slots=True)
class Option:
    """A setting that a build entry may give under ``with:``.

    ``default`` None means that it must be given. A text with a ``pattern``
    matches it as a whole and is a plain string for the template; one without
    is manifest text and wants an escape. Texts may hold ``{robot}``,
    ``{Robot}`` and ``{stem}``, the output's file name without its ending.
    """

    name: str
    type: str
    help: str
    default: Value | None = None
    pattern: str | None = None


@dataclass(frozen=True, slots=True)
class Target:
    """One sort of output.

    ``file`` is the usual file name, as a hint; ``escapes`` are the filters
    that its templates may use.
    """

    name: str
    description: str
    language: str | None
    per: Literal["robot", "workspace"]
    file: str
    template: str
    folder: Path
    escapes: tuple[str, ...]
    options: Mapping[str, Option]

    def settings(
        self, given: Mapping[str, Value], words: Mapping[str, str], path: str
    ) -> dict[str, Value | Unescaped]:
        """Return the value of every option, with ``{word}`` replaced in texts.

        Raises:
            UnusableTarget: an option is unknown, missing or has a wrong value.
        """
        for name in given:
            if name not in self.options:
                near = difflib.get_close_matches(name, self.options, n=1)
                known = ", ".join(self.options) or "none"
                hint = f"Did you mean {near[0]}? " if near else ""
                raise UnusableTarget(
                    f"target {self.name} has no option {name}",
                    where=path,
                    remedy=f"{hint}Its options: {known}.",
                )
        words = {**words, "stem": PurePosixPath(path).name.split(".")[0]}
        return {
            name: _setting(self, option, given.get(name, option.default), words)
            for name, option in self.options.items()
        }


def _setting(
    target: Target, option: Option, value: Value | None, words: Mapping[str, str]
) -> Value | Unescaped:
    where = f"target {target.name}, option {option.name}"
    if value is None:
        raise UnusableTarget("must be given under `with:`", where=where, remedy=option.help)
    if type(value) is not TYPES[option.type]:
        raise UnusableTarget(f"{value!r} is not a {option.type}", where=where, remedy=option.help)
    if not isinstance(value, str):
        return value
    text = re.sub(r"\{(\w+)\}", lambda match: words.get(match[1], match[0]), value)
    if option.pattern is None:
        return Unescaped(text)
    if re.fullmatch(option.pattern, text) is None:
        raise UnusableTarget(f"{text!r} cannot be used", where=where, remedy=option.help)
    return text
