"""Reads how each language spells identifiers, from ``templates/languages/``."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import get_args

from namegen.bundled import bundled
from namegen.errors import UnusableTarget
from namegen.model.identifiers import NamingScheme
from namegen.targets.yaml_file import YamlFile
from namegen.text.words import Case

FOLDER = "languages"
_CASES = ("constant_case", "type_case", "field_case")


@lru_cache(maxsize=1)
def naming_schemes() -> Mapping[str, NamingScheme]:
    """Return every language's scheme by its name.

    Raises:
        UnusableTarget: a language's file cannot be read or lacks something.
    """
    paths = sorted((bundled("templates") / FOLDER).glob("*.yaml"))
    return {path.stem: _scheme(path) for path in paths}


def _scheme(path: Path) -> NamingScheme:
    data = YamlFile(path, f"{FOLDER}/{path.name}").read(required={*_CASES, "pattern", "reserved"})
    for case in _CASES:
        if data[case] not in get_args(Case):
            raise UnusableTarget(f"{case} is {data[case]!r}", where=f"{FOLDER}/{path.name}")
    re.compile(str(data["pattern"]))
    reserved = {
        word: group["why"] for group in reversed(data["reserved"]) for word in group["words"]
    }
    if not all(isinstance(word, str) for word in reserved):  # YAML reads NULL and true as values
        raise UnusableTarget("a reserved word wants quotes", where=f"{FOLDER}/{path.name}")
    soft = [word for group in data["reserved"] if group.get("soft") for word in group["words"]]
    return NamingScheme(
        language=path.stem,
        constant_case=data["constant_case"],
        type_case=data["type_case"],
        field_case=data["field_case"],
        pattern=data["pattern"],
        reserved=reserved,
        soft=frozenset(soft),
    )
