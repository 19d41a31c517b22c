"""The sentences of faults that the shapes give: what is wrong, and what to do."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.loading.anatomy import fields_of
from namegen.loading.examples import Examples
from namegen.loading.nodes import GroupNode, ListNode, Node, TextNode
from namegen.loading.ports import A_PORT
from namegen.loading.shapes.shape import Shape


def nearest(word: str, words: Iterable[str]) -> str | None:
    """Return the one of ``words`` that ``word`` surely stands for, or that it begins."""
    # Likeness reads tables that only a text with faults needs.
    from namegen.text.likeness import nearest as likeliest

    known = list(words)
    begun = [one for one in known if len(word) >= 4 and one.startswith(word.lower())]
    return likeliest(word, known) or (begun[0] if len(begun) == 1 else None)


def group_expected(name: str, shape: type[Shape], node: Node, examples: Examples) -> str:
    """Return the message for something that is no group of fields where one belongs."""
    known = fields_of(shape)
    if name in known:
        return (
            f"`{name}` is a field of {shape.what}, but stands in the column of the names. Move the "
            "line two blanks to the right, below the name that it belongs to."
        )
    field = next(iter(shape.needed or known))
    example = examples.value(shape, field) if field in shape.needed else "..."
    written = "a list" if isinstance(node, ListNode) else "a single text"
    if isinstance(node, TextNode) and (shape.needed or shape.exactly_one):
        example = node.value
    return (
        f"The fields of {shape.what} belong here, but {written} stands here. Write each field on "
        f"an indented line of its own: `{field}: {example}`."
    )


def setup_expected(devices: Iterable[str]) -> str:
    """Return the message for something that is no setup."""
    some = [*list(devices)[:1], "DEVICE"][0]
    return (
        f"A setup is `everything`, or names its devices: `{{only: [{some}]}}`, or those that it "
        f"leaves out: `{{without: [{some}]}}`."
    )


def map_expected(node: Node) -> str:
    """Return the message for something that is not a group of named entries."""
    if isinstance(node, ListNode):
        return (
            "Names with a colon belong here, not a list. Leave the `-` or the brackets out: "
            "write each entry as `name: ...` on an indented line of its own."
        )
    return "Names with a colon belong here, each as `name: ...` on an indented line of its own."


def list_expected(node: Node) -> str:
    """Return the message for something that is no list."""
    if isinstance(node, GroupNode):
        return "A list belongs here: start each entry with `- `."
    return "A list belongs here, such as `[first, second]`."


def missing_field(message: str, line: str, group: Node) -> str:
    """Return the message for a field that must be there, with the line to add."""
    if isinstance(group, GroupNode) and group.flow:
        return f"{message}. Add it inside the braces: `{line}`."
    return f"{message}. Add a line to it such as `{line}`."


def one_word(what: str, name: str) -> str:
    """Return the message for a name with a blank in it that is to be a word of a port."""
    return (
        f"{what} is one word, because a port is written as `{A_PORT}`. "
        f"Write it `{'-'.join(name.split()) or 'NAME'}`."
    )
