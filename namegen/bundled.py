"""Where the data that comes with the package lies: templates and the example."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def bundled(name: str) -> Path:
    """Return the folder ``templates`` or ``examples``: inside the wheel, or in the source tree."""
    packed = _PACKAGE / "_bundled" / name
    return packed if packed.is_dir() else _PACKAGE.parent / name
