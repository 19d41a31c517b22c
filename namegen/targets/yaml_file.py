"""Reads the small YAML files that describe targets and languages."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from namegen.errors import UnusableTarget
from namegen.model.places import Place
from namegen.targets.wording import excerpt
from namegen.text.likeness import nearest

if TYPE_CHECKING:
    from yaml import Node


class BadDescription(UnusableTarget):
    """A description that cannot be used, with the place that is wrong."""

    def __init__(self, what: str, *, place: Place, shown: str = "", remedy: str = "") -> None:
        """Tell a place with the line ``shown`` there, or only the file where nothing is shown."""
        where = f"{place.path}:{place.line}" if shown else place.path
        super().__init__(what, where=where, remedy="\n  ".join(filter(None, (shown, remedy))))
        self.place = place
        self.way_out = remedy


class YamlFile(Struct, frozen=True):
    """A file of YAML and what messages call it."""

    path: Path
    shown: str

    def read(self, *, required: Collection[str], allowed: Collection[str] = ()) -> dict[str, Any]:
        """Return the mapping in the file, whose keys are among those required and allowed.

        Raises:
            BadDescription: the file cannot be read, is no mapping, lacks a key or
                has one too many.
        """
        data = self._parsed()
        if not isinstance(data, dict):
            raise self.fault((), "holds no fields", f"It wants {', '.join(required)}.")
        known = (*required, *allowed)
        for key in data:
            if key not in known:
                near = nearest(str(key), known)
                meant = f"; did you mean {near}?" if near else ""
                what = f"has an unknown field: {key}{meant}"
                raise self.fault((key,), what, f"Known fields: {', '.join(known)}.")
        missing = [name for name in required if data.get(name) is None]
        if missing:
            also = f"; it may have {', '.join(allowed)}" if allowed else ""
            wants = f"It wants {', '.join(required)}{also}."
            raise self.fault(missing[:1], f"lacks {', '.join(missing)}", wants)
        return data

    def fault(self, keys: Sequence[object], what: str, remedy: str = "") -> BadDescription:
        """Return the error of the field that the keys lead to, or of what is nearest above it."""
        import yaml

        text = self.path.read_text(encoding="utf-8-sig")
        node, found = yaml.compose(text, Loader=yaml.SafeLoader), None
        for key in keys:
            below = _field(node, str(key))
            if below is None:
                break
            found, node = below
        if found is None:
            return BadDescription(what, place=Place(self.shown), remedy=remedy)
        start, end = found.start_mark, found.end_mark
        place = Place(self.shown, start.line + 1, start.column + 1, end.line + 1, end.column + 1)
        return BadDescription(what, place=place, shown=excerpt(text, place.line), remedy=remedy)

    def _parsed(self) -> object:
        """Return what stands in the file.

        Raises:
            BadDescription: it cannot be read, or is no YAML.
        """
        import yaml

        loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
        try:
            return yaml.load(self.path.read_text(encoding="utf-8"), Loader=loader)
        except OSError as error:
            raise BadDescription(
                f"cannot be read: {error.strerror}",
                place=Place(self.shown),
                remedy=f"Each folder beside it is a target with a {self.path.name}. Begin the name "
                "of a folder that is none with an underscore.",
            ) from error
        except (ValueError, yaml.YAMLError) as error:  # YAML takes 2026-99-99 for a date
            raise self._no_yaml(error) from error

    def _no_yaml(self, error: Exception) -> BadDescription:
        import yaml

        bytes_are_wrong = isinstance(error, UnicodeDecodeError | yaml.reader.ReaderError)
        problem = "not UTF-8" if bytes_are_wrong else getattr(error, "problem", None) or error
        mark = getattr(error, "problem_mark", None)
        place, shown = Place(self.shown), ""
        if mark is not None:
            line, column = mark.line + 1, mark.column + 1
            place = Place(self.shown, line, column, line, column)
            shown = excerpt(self.path.read_text(encoding="utf-8-sig"), line) or f"{line:>3} |"
        return BadDescription(
            f"is not YAML: {problem}",
            place=place,
            shown=shown,
            remedy="Indent with blanks, not tabs, and put quotes around a text with other signs "
            "than letters and digits.",
        )


def _field(node: Node | None, key: str) -> tuple[Node, Node] | None:
    """Return the nodes of a field's name and value."""
    value = getattr(node, "value", None)
    pairs = value if isinstance(value, list) else ()
    return next(
        (pair for pair in pairs if isinstance(pair, tuple) and pair[0].value == key),
        None,
    )


def named(path: Path, root: Path | None = None) -> str:
    """Return what messages call a file of a target: its path from the workspace on.

    Where it lies elsewhere, the last two parts are enough to find it, on any machine.
    """
    if root is not None and path.is_relative_to(root):
        return path.relative_to(root).as_posix()
    return "/".join(path.parts[-2:])
