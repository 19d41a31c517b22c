"""What lies inside a shape: its fields, and the shapes below it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import get_args, get_origin

from namegen.loading.shapes.shape import Shape


def fields_of(shape: type[Shape]) -> dict[str, str]:
    """Return the names of a shape's fields as they are typed -> as Python knows them."""
    return {found.alias or name: name for name, found in shape.model_fields.items()}


def shape_in(expected: object) -> type[Shape] | None:
    """Return the shape that a type stands for, or None when it is another type."""
    bare = _bare(expected)
    if isinstance(bare, type) and get_origin(bare) is None and issubclass(bare, Shape):
        return bare
    return None


def below(expected: object, part: int | str) -> tuple[type[Shape] | None, object]:
    """Return the shape that has the field ``part``, and the type that lies one step deeper."""
    inside = shape_in(expected)
    if inside:
        name = fields_of(inside).get(str(part))
        return inside, inside.model_fields[name].annotation if name else None
    arguments = get_args(_bare(expected))
    return None, arguments[-1] if arguments else None


@cache
def shapes_within(shape: type[Shape]) -> tuple[type[Shape], ...]:
    """Return a shape and all that lie in it, from the outside inwards."""
    return tuple(dict.fromkeys((shape, *_within(shape))))


def _within(shape: type[Shape]) -> Iterator[type[Shape]]:
    for field in shape.model_fields.values():
        expected: object = field.annotation
        while shape_in(expected) is None and get_args(_bare(expected)):
            expected = below(expected, "")[1]
        inner = shape_in(expected)
        if inner:
            yield from shapes_within(inner)


def _bare(expected: object) -> object:
    """Return a type without ``Annotated`` and ``| None``."""
    while True:
        arguments = get_args(expected)
        if hasattr(expected, "__metadata__"):
            expected = arguments[0]
        elif type(None) in arguments:
            expected = next(one for one in arguments if one is not type(None))
        else:
            return expected
