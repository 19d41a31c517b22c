"""Reports: a list of findings as text, JSON, SARIF or lines.

There is no list of formats. A module in here that has a ``NAME`` is one, and has
``render`` in the shape of `Renderer`; the others are shared by them.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Protocol, cast

if TYPE_CHECKING:
    from namegen.model.findings import FindingKind
    from namegen.model.reports import Report, SourceText


class Renderer(Protocol):
    """Turns a report into one text that ends with a line end and can be written as UTF-8.

    ``source`` gives the text of a file to show lines of, ``kinds`` what each
    finding kind is. ``width`` (terminal columns) and ``colour`` matter to the
    formats for people alone.
    """

    def __call__(
        self,
        report: Report,
        source: SourceText,
        kinds: Mapping[str, FindingKind],
        *,
        width: int = 80,
        colour: bool = False,
    ) -> str:
        """Return the rendered report."""


def names() -> tuple[str, ...]:
    """Return the formats, in alphabetical order."""
    return tuple(sorted(_renderers()))


def renderer(name: str) -> Renderer:
    """Return what renders a report in this format.

    Raises:
        KeyError: there is no such format.
    """
    return _renderers()[name]


@cache
def _renderers() -> Mapping[str, Renderer]:
    found = [
        importlib.import_module(f"{__name__}.{m.name}") for m in pkgutil.iter_modules(__path__)
    ]
    return {
        module.NAME: cast("Renderer", module.render) for module in found if hasattr(module, "NAME")
    }
