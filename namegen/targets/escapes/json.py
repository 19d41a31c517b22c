"""Escapes for JSON."""

from __future__ import annotations

import json
import re

from namegen.targets.unescaped import raw

_ENCODER = json.JSONEncoder(ensure_ascii=False, default=raw)
_QUOTED = re.compile(r"[^ -~]")


def value(item: object) -> str:
    """Return a text, a number, true, false, null or a list of them as JSON.

    Letters of every script stay readable; what cannot be seen, turns the
    writing direction or ends a line in JavaScript is written as an escape.
    """
    text = _ENCODER.encode(item)
    return text if text.isascii() else _QUOTED.sub(_escaped, text)


def _escaped(match: re.Match[str]) -> str:
    return match[0] if match[0].isprintable() else json.dumps(match[0])[1:-1]
