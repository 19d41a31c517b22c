"""The sentences of faults that the shapes give: what is wrong, and what to do."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.loading.nodes import GroupNode, ListNode, Node, TextNode
from namegen.loading.shapes import Shape


def nearest(word: str, words: Iterable[str]) -> str | None:
    """Return the one of ``words`` that ``word`` surely stands for, or that it begins."""
    # Likeness reads tables that only a text with faults needs.
    from namegen.text.likeness import nearest as likeliest

    known = list(words)
    begun = [one for one in known if len(word) >= 4 and one.startswith(word.lower())]
    return likeliest(word, known) or (begun[0] if len(begun) == 1 else None)


def fields_of(shape: type[Shape]) -> dict[str, str]:
    """Return the names of a shape's fields as they are typed -> as Python knows them."""
    return {found.alias or name: name for name, found in shape.model_fields.items()}


def unknown_field(name: str, shape: type[Shape]) -> tuple[str, str | None]:
    """Return the message for a field that does not exist, and the field that was meant."""
    known = fields_of(shape)
    lower = name.lower().replace("-", "_").replace(" ", "_")
    if lower in known:
        return f"Write this field `{lower}`, in exactly these letters.", lower
    close = nearest(name, known)
    if close:
        return f"`{name}` is no field of {shape.what}. Did you mean `{close}`?", close
    home = _home(name)
    if home:
        return (
            f"`{name}` is a field of {home}, not of {shape.what}. Look at the blanks in front of "
            "the line: they decide what it belongs to."
        ), None
    listed = ", ".join(f"`{field}`" for field in known)
    return f"`{name}` is no field of {shape.what}. It has: {listed}.", None


def _home(name: str) -> str | None:
    homes = [shape.what for shape in Shape.__subclasses__() if name in fields_of(shape)]
    return homes[0] if homes else None


def group_expected(name: str, shape: type[Shape], node: Node) -> str:
    """Return the message for something that is no group of fields where one belongs."""
    known = fields_of(shape)
    if name in known:
        return (
            f"`{name}` is a field of {shape.what}, but stands where its name belongs. Move the "
            "line two blanks to the right, below the name."
        )
    field, example = next(iter((shape.needed or {next(iter(known)): "..."}).items()))
    written = "a list" if isinstance(node, ListNode) else "a single text"
    return (
        f"{shape.what.capitalize()} has fields, but {written} stands here. Write each field on a "
        f"line of its own below the name: `{field}: {example}`."
    )


def map_expected(node: Node) -> str:
    """Return the message for something that is not a group of named entries."""
    if isinstance(node, ListNode):
        return (
            "Names with a colon belong here, not a list. Leave the `-` or the brackets out: "
            "write each entry as `name: ...` on a line of its own."
        )
    return "Names with a colon belong here, each as `name: ...` on an indented line of its own."


def list_expected(node: Node) -> str:
    """Return the message for something that is no list."""
    if isinstance(node, GroupNode):
        return "A list belongs here: start each entry with `- `."
    return "A list belongs here, such as `[first, second]`."


def missing_field(shape: type[Shape], field: str, key: TextNode | None, group: Node) -> str:
    """Return the message for a field that must be there."""
    name = f"`{key.value}`" if key else shape.what.capitalize()
    example = shape.needed[field]
    if isinstance(group, GroupNode) and group.flow:
        return f"{name} has no `{field}`. Add it inside the braces: `{field}: {example}`."
    return f"{name} has no `{field}`. Add a line to it such as `{field}: {example}`."


def unknown_word(word: str, what: str, words: Iterable[str], declare: str) -> str:
    """Return the message for a word that the catalogue does not know."""
    close = nearest(word, words)
    hint = f" Did you mean `{close}`?" if close else ""
    return f"`{word}` is no {what} that namegen knows.{hint} {declare}"
