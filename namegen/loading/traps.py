"""Traps of YAML: text that is valid and means something else than its writer thinks."""

from __future__ import annotations

import re

from namegen.loading.nodes import FieldNode, GroupNode, TextNode
from namegen.model.findings import Fault

# A comment has a blank after its ``#``, or is set apart by more than one blank
# before it. ``motor #1`` and ``motor # 1`` are neither.
_CUT = re.compile(r" #(?:\w| [0-9]+[ \t]*(?:[\r\n]|\Z))")


def cut_by_comment(node: TextNode) -> Fault | None:
    """Return a fault when the rest of a plain text was lost to `` #``."""
    source = node.source
    if _CUT.match(source.text, node.end) is None:
        return None
    whole = node.value + source.rest_of_line(node.end).rstrip()
    whole = whole.lstrip()
    lost = "nothing" if not node.value else f"only `{node.value}`"
    return Fault(
        "cut-by-comment",
        f"A `#` after a blank starts a comment, so {lost} was read here. If it belongs to the "
        f'text, put quotes around the text: "{whole}". If it is a comment, put a blank after '
        "the `#` and two before it.",
        source.place(node.start, node.end + len(source.rest_of_line(node.end).rstrip())),
        found=node.value,
        expected=whole,
    )


def field_without_value(group: GroupNode, added: FieldNode) -> Fault | None:
    """Return a fault for a field in braces that has no colon of its own.

    ``{does: Left, right}`` has a second field ``right``; ``{volts:12}`` has one
    field of the name ``volts:12``. Braces around a lone word are left alone:
    what they should have been depends on the field.
    """
    key, value = added
    if not isinstance(value, TextNode) or value.start != value.end:
        return None
    if key.style or ":" in key.source.text[key.end : value.end]:
        return None
    name, colon, rest = key.value.partition(":")
    if colon and rest:
        return Fault(
            "wrong-value",
            f"A colon needs a blank after it: write `{name}: {rest}`.",
            key.place,
            found=key.value,
            expected=f"{name}: {rest}",
        )
    before = _before(group, key)
    if before is None:
        return None
    return Fault(
        "wrong-value",
        f"A comma inside {{ }} starts a new field, so `{key.value}` was read as a field of its "
        "own. If it belongs to the text before it, put quotes around the whole text: "
        f'"{before.value}, {key.value}". If it is a field, give it a value: `{key.value}: ...`.',
        key.place,
        found=key.value,
        expected=f'"{before.value}, {key.value}"',
    )


def _before(group: GroupNode, key: TextNode) -> TextNode | None:
    """Return the plain text that stands just before a key in braces."""
    last: FieldNode | None = None
    for found in group.fields.values():
        if found.key is key:
            break
        last = found
    if last is None or not isinstance(last.value, TextNode) or last.value.cleared:
        return None
    return last.value
