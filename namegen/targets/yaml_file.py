"""Reads the small YAML files that describe targets and languages."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path
from typing import Any

from namegen.errors import UnusableTarget
from namegen.text.likeness import nearest


def read(path: Path, *, required: Collection[str], allowed: Collection[str] = ()) -> dict[str, Any]:
    """Return the mapping in a file, whose keys are among those required and allowed.

    Raises:
        UnusableTarget: the file cannot be read, is no mapping, lacks a key or
            has one too many.
    """
    where, data = shown(path), _parsed(path)
    if not isinstance(data, dict):
        raise UnusableTarget(
            "holds no fields", where=where, remedy=f"It wants {', '.join(required)}."
        )
    known = (*required, *allowed)
    for key in data:
        if key not in known:
            near = nearest(str(key), known)
            meant = f"; did you mean {near}?" if near else ""
            raise UnusableTarget(
                f"has an unknown field: {key}{meant}",
                where=where,
                remedy=f"Known fields: {', '.join(known)}.",
            )
    missing = [name for name in required if data.get(name) is None]
    if missing:
        also = f"; it may have {', '.join(allowed)}" if allowed else ""
        raise UnusableTarget(
            f"lacks {', '.join(missing)}",
            where=where,
            remedy=f"It wants {', '.join(required)}{also}.",
        )
    return data


def _parsed(path: Path) -> object:
    """Return what stands in a file of YAML.

    Raises:
        UnusableTarget: it cannot be read, or is no YAML.
    """
    import yaml

    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    try:
        return yaml.load(path.read_text(encoding="utf-8"), Loader=loader)
    except OSError as error:
        raise UnusableTarget(
            f"cannot be read: {error.strerror}",
            where=shown(path),
            remedy=f"Each folder beside it is a target with a {path.name}. Begin the name of a "
            "folder that is none with an underscore.",
        ) from error
    except (ValueError, yaml.YAMLError) as error:  # YAML takes 2026-99-99 for a date
        mark = getattr(error, "problem_mark", None)
        line = f":{mark.line + 1}" if mark else ""
        bytes_are_wrong = isinstance(error, UnicodeDecodeError | yaml.reader.ReaderError)
        problem = "not UTF-8" if bytes_are_wrong else getattr(error, "problem", None) or error
        raise UnusableTarget(
            f"is not YAML: {problem}",
            where=shown(path) + line,
            remedy="Indent with blanks, not tabs, and put quotes around a text with other signs "
            "than letters and digits.",
        ) from error


def shown(path: Path) -> str:
    """Return the last two parts of a path: enough to find a file of a target, on any machine."""
    return "/".join(path.parts[-2:])
