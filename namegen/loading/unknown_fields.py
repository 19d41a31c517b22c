"""Fields that do not exist: what was meant, and what to say of it."""

from __future__ import annotations

from typing import NamedTuple

from namegen.loading.anatomy import fields_of, shapes_within
from namegen.loading.nodes import GroupNode, TextNode
from namegen.loading.shapes.shape import Shape
from namegen.loading.wordings import nearest

_MOVE = "Look at the blanks in front of the line: they decide what it belongs to."


class UnknownField(NamedTuple):
    """What to say of a field that does not exist, and the field that was meant.

    ``sure`` says that its value can be read as that field's.
    """

    message: str
    meant: str | None = None
    sure: bool = False


def unknown_field(
    name: str, group: GroupNode, shape: type[Shape], document: type[Shape]
) -> UnknownField:
    """Return what a field of ``group`` was meant to be.

    ``shape`` is the group's own, ``document`` that of the whole file.
    """
    known = fields_of(shape)
    lower = name.lower().replace("-", "_").replace(" ", "_")
    if lower in known:
        return UnknownField(f"Write this field `{lower}`, in exactly these letters.", lower, True)
    home = _home(name, shapes_within(document))
    close = nearest(name, known)
    if close and (home is None or close.startswith(name) or name.startswith(close)):
        message = f"`{name}` is no field of {shape.what}. Did you mean `{close}`?"
        return UnknownField(message, close, True)
    if home:
        return UnknownField(f"`{name}` is a field of {home}, not of {shape.what}. {_MOVE}")
    other = _another_word(name, known)
    if other:
        message = f"`{name}` is no field of {shape.what}. Did you mean `{other}`?"
        return UnknownField(message, other)
    return UnknownField(_stray(name, group, shape, known))


def _stray(name: str, group: GroupNode, shape: type[Shape], known: dict[str, str]) -> str:
    """Return the message for a field that is like no other here."""
    above = _empty_above(name, group, known)
    if above:
        return (
            f"`{name}` is no field of {shape.what}. If it belongs to `{above}`, put two blanks "
            "more in front of this line and of the lines that belong to it."
        )
    foreign = _home(name, _all_shapes())
    if foreign:
        return f"`{name}` is a field of {foreign}, which is another file. Move it there."
    listed = ", ".join(f"`{field}`" for field in known)
    message = f"`{name}` is no field of {shape.what}. It has: {listed}."
    if "with" in known:
        message += f" An option of the target is written `with: {{{name}: ...}}`."
    return message


def _all_shapes() -> tuple[type[Shape], ...]:
    from namegen.loading.shapes.catalogue import CatalogueShape
    from namegen.loading.shapes.manifest import ManifestShape
    from namegen.loading.shapes.workspace import WorkspaceShape

    outermost = (ManifestShape, CatalogueShape, WorkspaceShape)
    return tuple(shape for one in outermost for shape in shapes_within(one))


def _home(name: str, shapes: tuple[type[Shape], ...]) -> str | None:
    return next((shape.what for shape in shapes if name in fields_of(shape)), None)


def _another_word(name: str, known: dict[str, str]) -> str | None:
    """Return the field that people call by this name in charts: ``type`` for ``kind``."""
    from namegen.loading.charts.columns import field_called

    field = field_called(name)
    return field if field in known else None


def _empty_above(name: str, group: GroupNode, known: dict[str, str]) -> str | None:
    """Return the nearest field above when nothing stands in it."""
    names = list(group.fields)
    above = next((one for one in reversed(names[: names.index(name)]) if one in known), None)
    value = group.value(above) if above else None
    empty = isinstance(value, TextNode) and value.cleared and not group.flow
    return above if empty else None
