"""Reads the small YAML files that describe targets and languages."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path
from typing import Any

from namegen.errors import UnusableTarget


def read(path: Path, *, required: Collection[str], allowed: Collection[str] = ()) -> dict[str, Any]:
    """Return the mapping in a file, whose keys are among those required and allowed.

    Raises:
        UnusableTarget: the file cannot be read, is no mapping, lacks a key or
            has one too many.
    """
    import yaml

    where = shown(path)
    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    try:
        data = yaml.load(path.read_text(encoding="utf-8"), Loader=loader)
    except OSError as error:
        raise UnusableTarget(f"cannot be read: {error.strerror}", where=where) from error
    except (UnicodeDecodeError, yaml.YAMLError) as error:
        mark = getattr(error, "problem_mark", None)
        line = f":{mark.line + 1}" if mark else ""
        problem = getattr(error, "problem", None) or "not UTF-8"
        raise UnusableTarget(f"is not YAML: {problem}", where=where + line) from error
    if not isinstance(data, dict):
        raise UnusableTarget("holds no fields", where=where)
    missing = sorted(set(required) - set(data))
    if missing:
        raise UnusableTarget(f"lacks {', '.join(missing)}", where=where)
    unknown = [str(key) for key in data if key not in {*required, *allowed}]
    if unknown:
        known = ", ".join(sorted({*required, *allowed}))
        raise UnusableTarget(
            f"has an unknown field: {unknown[0]}", where=where, remedy=f"Known fields: {known}."
        )
    return data


def shown(path: Path) -> str:
    """Return the last two parts of a path: enough to find a file of a target, on any machine."""
    return "/".join(path.parts[-2:])
