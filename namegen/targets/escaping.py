"""Finds the escapes that templates may use as filters, by name: ``json_value``."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache

from namegen.errors import UnusableTarget
from namegen.targets import escapes
from namegen.targets.unescaped import unwrapping
from namegen.text.likeness import nearest

Escape = Callable[..., str]


@lru_cache(maxsize=1)
def all_escapes() -> Mapping[str, Escape]:
    """Return every escape by its name: the module's name and the function's."""
    return dict(_found())


def summary(name: str) -> str:
    """Return the first line of an escape's documentation."""
    return (inspect.getdoc(all_escapes()[name]) or "").partition("\n")[0]


def escape(name: str) -> Callable[[object], str]:
    """Return an escape as a filter that takes manifest text.

    Raises:
        UnusableTarget: there is no such escape.
    """
    module, _, function = name.partition("_")
    try:  # one module, not all of them: a build pays for what it uses
        found: Escape = getattr(importlib.import_module(f"{escapes.__name__}.{module}"), function)
    except (ImportError, AttributeError, ValueError) as error:
        near = nearest(name, all_escapes())
        raise UnusableTarget(
            f"there is no escape {name}" + (f"; did you mean {near}?" if near else ""),
            remedy=f"The escapes: {', '.join(all_escapes())}.",
        ) from error
    return unwrapping(found)


def _found() -> Iterator[tuple[str, Escape]]:
    for entry in pkgutil.iter_modules(escapes.__path__):
        module = importlib.import_module(f"{escapes.__name__}.{entry.name}")
        for name, function in inspect.getmembers(module, inspect.isfunction):
            if function.__module__ == module.__name__ and not name.startswith("_"):
                yield f"{entry.name}_{name}", function
