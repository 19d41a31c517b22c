"""Escapes for JSON."""

from __future__ import annotations

import json
import re

from namegen.targets.unescaped import raw

_ENCODER = json.JSONEncoder(ensure_ascii=False, default=raw)
_WORDS = {None: "null", True: "true", False: "false"}
_QUOTED = re.compile(r"[^ -~]")


def value(item: object) -> str:
    """Return a text, a number, true, false, null or a list of them as JSON.

    Letters of every script stay readable; what cannot be seen, turns the
    writing direction or ends a line in JavaScript is written as an escape.
    """
    if item is None or isinstance(item, bool):  # half of what is asked, and slow to encode
        return _WORDS[item]
    text = _ENCODER.encode(item)
    return text if text.isprintable() else _QUOTED.sub(_escaped, text)


def _escaped(match: re.Match[str]) -> str:
    if match[0].isprintable():
        return match[0]
    units = match[0].encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{units[i]:02x}{units[i + 1]:02x}" for i in range(0, len(units), 2))
