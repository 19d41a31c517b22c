"""The ways to make an object of a Kotlin class, and what a call gives to the parameters of one."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.kotlin.trees import (
    after_sign,
    argument_value,
    arguments_of,
    body_of,
    child_of,
    default_of,
    key_of,
    modifiers_of,
)
from namegen.languages.sources import Source, elements


class Parameter(Struct, frozen=True):
    """A parameter of a constructor."""

    name: str
    default: Node | None
    several: bool


class Constructor(Struct, frozen=True):
    """One way to make an object: ``node`` is the class itself for the constructor in its head."""

    node: Node
    parameters: tuple[Parameter, ...]
    delegates: Node | None = None
    """The call of another constructor, ``this(...)``, that a second one begins with."""

    def filled(self, source: Source, made_by: Node) -> dict[str, Node] | None:
        """Return what a call gives to the parameters by their names; None if it does not fit."""
        listed = arguments_of(made_by)
        found: dict[str, Node] = {}
        for place, one in enumerate(elements(listed)):
            key, value = key_of(one), argument_value(one)
            parameter = self._named(source.text(key)) if key is not None else self._placed(place)
            if parameter is None or value is None or parameter.name in found:
                return None
            if not parameter.several:
                found[parameter.name] = value
        needed = (one for one in self.parameters if one.default is None and not one.several)
        return found if all(one.name in found for one in needed) else None

    def _named(self, word: str) -> Parameter | None:
        return next((one for one in self.parameters if one.name == word), None)

    def _placed(self, place: int) -> Parameter | None:
        """Return the parameter at a place; all behind one that takes several are its own."""
        several = next((at for at, one in enumerate(self.parameters) if one.several), place)
        at = min(place, several)
        return self.parameters[at] if at < len(self.parameters) else None


class Constructors:
    """Finds the ways to make objects of the classes of a file, and remembers them."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self._known: dict[int, tuple[Constructor, ...]] = {}

    def of(self, owner: Node) -> Sequence[Constructor]:
        """Return the constructors of a class; none where its companion may make objects too."""
        if owner.id not in self._known:
            self._known[owner.id] = tuple(self._found(owner))
        return self._known[owner.id]

    def _found(self, owner: Node) -> list[Constructor]:
        companion = child_of(body_of(owner), "companion_object")
        names = (one.child_by_field_name("name") for one in _members(companion))
        if any(name is not None and self.source.text(name) == "invoke" for name in names):
            return []
        others = [one for one in _members(owner) if one.type == "secondary_constructor"]
        first = child_of(owner, "primary_constructor")
        found = [self._second(one) for one in others]
        if first is not None or not others:
            found.append(Constructor(owner, self._listed(child_of(first, "class_parameters"))))
        return found

    def _second(self, node: Node) -> Constructor:
        call = child_of(node, "constructor_delegation_call")
        own = call if call is not None and call.children[0].type == "this" else None
        return Constructor(node, self._listed(child_of(node, "function_value_parameters")), own)

    def _listed(self, listed: Node | None) -> tuple[Parameter, ...]:
        found: list[Parameter] = []
        several = False
        for one in elements(listed):
            name = child_of(one, "identifier")
            if one.type == "parameter_modifiers":
                several = "vararg" in self.source.text(one).split()
            elif one.type in {"class_parameter", "parameter"} and name is not None and listed:
                in_head = one.type == "class_parameter"
                default = after_sign(one, "=") if in_head else default_of(listed, one)
                marked = several or "vararg" in modifiers_of(self.source, one)
                found.append(Parameter(self.source.text(name), default, marked))
                several = False
        return tuple(found)


def _members(declaration: Node | None) -> list[Node]:
    body = body_of(declaration) if declaration is not None else None
    return elements(body)
