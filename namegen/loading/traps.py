"""Traps of YAML: text that is valid and means something else than its writer thinks."""

from __future__ import annotations

import re

from namegen.loading.nodes import FieldNode, GroupNode, TextNode
from namegen.model.findings import Fault

# A comment has a blank after its ``#``, or is set apart by more than one blank
# before it. ``motor #1`` and ``motor # 1`` are neither.
_CUT = re.compile(r" #(?:\w| [0-9]+[ \t]*(?:[\r\n]|\Z))")
_DECIMAL_COMMA = re.compile(r"[+-]?[0-9]+, ?[0-9]+")
_FIELD = re.compile(r"[a-z_]+")
_ITEMS = re.compile(r"[\w.-]+, *[\w.-]+")
_FLOW_END = re.compile(r"[],}]")


def cut_by_comment(node: TextNode, flow: bool) -> Fault | None:
    """Return a fault when the rest of a plain text was lost to `` #``.

    ``flow`` says whether the text stands in brackets or braces.
    """
    source = node.source
    if _CUT.match(source.text, node.end) is None:
        return None
    lost = source.rest_of_line(node.end).rstrip()
    if flow:
        lost = _FLOW_END.split(lost, maxsplit=1)[0].rstrip()
    whole = (node.value + lost).lstrip()
    read = f"only `{node.value}`" if node.value else "nothing"
    return Fault(
        "cut-by-comment",
        f"A `#` after a blank starts a comment, so {read} was read here. If it belongs to the "
        f'text, put quotes around the text: "{whole}". If it is a comment, put a blank after '
        "the `#` and two before it.",
        source.place(node.start, node.end + len(lost)),
        found=node.value,
        expected=whole,
    )


def colon_without_blank(added: FieldNode) -> tuple[Fault, FieldNode] | None:
    """Return a fault for ``{volts:12}``, one field of that name, and the field as it was meant."""
    key = added.key
    name, colon, rest = key.value.partition(":")
    if not _lacks_colon(added) or not (name and colon and rest):
        return None
    fault = Fault(
        "wrong-value",
        f"A colon needs a blank after it: write `{name}: {rest}`.",
        key.place,
        found=key.value,
        expected=f"{name}: {rest}",
    )
    start = key.start + len(name)
    value = TextNode(key.source, start + 1, key.end, rest)
    return fault, FieldNode(TextNode(key.source, key.start, start, name), value)


def comma_in_text(group: GroupNode, added: FieldNode) -> Fault | None:
    """Return a fault for ``{does: Left, right}``, which has a second field ``right``.

    Braces around a lone word are left alone: what was meant depends on the field.
    """
    key = added.key
    last = next(reversed(group.fields.values()), None)
    before = last.value if last else None
    if not _lacks_colon(added) or not isinstance(before, TextNode) or before.cleared:
        return None
    whole = key.source.text[before.start : key.end]
    if _DECIMAL_COMMA.fullmatch(whole):
        way_out = f"Write the number with a point: `{whole.replace(',', '.').replace(' ', '')}`."
    else:
        ways_out = [
            f"If it belongs to the text before it, put quotes around the whole text: "
            f'"{_one_line(whole)}".',
            f"If it is a field, give it a value: `{key.value}: ...`.",
        ]
        if _FIELD.fullmatch(key.value):
            ways_out.reverse()
        if _ITEMS.fullmatch(whole):
            ways_out.append(f"If they are a list, put brackets around it: [{whole}].")
        way_out = " ".join(ways_out)
    message = (
        f"A comma inside {{ }} starts a new field, so `{key.value}` was read as a field of its "
        f"own. {way_out}"
    )
    return Fault("wrong-value", message, key.place, found=key.value)


def _one_line(text: str) -> str:
    """Return a text that a reader can write between double quotes."""
    return " ".join(text.replace('"', "").split())


def _lacks_colon(added: FieldNode) -> bool:
    """Whether a field in braces is a plain word without a colon after it."""
    key, value = added
    if not isinstance(value, TextNode) or value.start != value.end or key.style:
        return False
    return ":" not in key.source.text[key.end : value.end]
