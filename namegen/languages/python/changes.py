"""Changes of Python names besides plain assignments, laid at what they may change.

``names.append("bow")`` changes a list, ``boat.name = "bow"`` an attribute of whatever class,
and a class with a base shares attributes with it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.definitions import CHANGED, HANDED_ON, OVERRIDDEN
from namegen.languages.python.altering import SETTERS, changed_by, is_changeable_list
from namegen.languages.python.binding import Binding
from namegen.languages.python.scopes import Scope, own_name, scope_of
from namegen.languages.sources import Source, Stack, elements, same


class Change(Struct, frozen=True):
    """One place that changes a name: a plain one, one of the own object, one of any object."""

    name: Node
    within: Scope
    of: Scope | Literal["name", "object"]
    sort: Literal["assigned", "in place", "another name"]
    other: str = ""
    """The other name, where it is a plain one."""


def change_at(source: Source, stack: Stack) -> Change | None:
    """Return the change of the name that the last node of the stack is, but for assignments."""
    above = stack[-2]
    if above.type != "attribute" or not same(above.child_by_field_name("attribute"), stack[-1]):
        how = changed_by(source, stack)
        if how is None:
            return None
        return Change(stack[-1], scope_of(source, stack), "name", how, _plain_target(source, stack))
    how = changed_by(source, stack[:-1])
    is_set = _is_set(stack)
    if how is None and not is_set:
        return None
    scope = scope_of(source, stack)
    own = own_class(source, stack, scope)
    if how is not None and not is_set:
        return Change(stack[-1], scope, own or "object", how)
    return Change(stack[-1], scope, "object", "assigned") if own is None else None


def _is_set(stack: Stack) -> bool:
    """Whether the attribute that the last node names gets a value."""
    attribute, above = stack[-2], stack[-3]
    if above.type in {"assignment", "augmented_assignment", "for_statement"}:
        return same(above.child_by_field_name("left"), attribute)
    return above.type in SETTERS


def _plain_target(source: Source, stack: Stack) -> str:
    """Return the name that is assigned just what the last node names; empty for anything else."""
    above = stack[-2]
    left = above.child_by_field_name("left") if above.type == "assignment" else None
    alone = left is not None and left.type == "identifier" and stack[-3].type != "assignment"
    return source.text(left) if left is not None and alone else ""


def own_class(source: Source, stack: Stack, scope: Scope) -> Scope | None:
    """Return the class around a method whose object is what ``self.name`` at the end is of."""
    whose = stack[-2].child_by_field_name("object")
    if whose is None or whose.type != "identifier":
        return None
    word = source.text(whose)
    method: Scope | None = scope
    while method is not None and own_name(source, method) != word:
        method = method.outer
    return method.outer if method is not None else None


def laid(
    changes: Sequence[Change], bindings: Sequence[Binding], *, lists: bool = False
) -> Iterator[Binding]:
    """Yield what changes bind: the name around them that they mean, or all that they may mean.

    ``lists``: whether the names hold lists, whatever they are given here.
    """
    classes = {one.scope.node.id: one.scope for one in bindings if one.scope.sort == "class"}
    several = {
        one.scope.node.id
        for one in bindings
        if lists or (one.value is not None and is_changeable_list(one.value))
    }
    for change in changes:
        for scope in _meant(change, bindings, list(classes.values())):
            if change.sort != "another name" or scope.node.id in several:
                why = HANDED_ON if change.sort == "another name" else CHANGED
                attribute = change.of != "name"
                yield Binding(
                    change.name, scope, "unknown", change.within, why=why, attribute=attribute
                )


def _meant(
    change: Change, bindings: Sequence[Binding], classes: Sequence[Scope]
) -> Sequence[Scope]:
    if change.of == "object":
        return classes
    if change.of != "name":
        own = [one for one in classes if one.node.id == change.of.node.id]
        return own or classes  # else it is inherited
    scope: Scope | None = change.within
    while scope is not None:
        bound = (one for one in bindings if one.scope.node.id == scope.node.id)
        if any(not one.attribute for one in bound):
            return [scope]
        scope = scope.outer
    return []


def shared(source: Source, bindings: Sequence[Binding]) -> Iterator[Binding]:
    """Yield that an attribute is not known: of a class with a derived one that binds it too.

    Where it is set as ``self.name`` in the base, or only later in the derived class, it is not
    known in that one either.
    """
    classes = {one.scope.node.id: one.scope for one in bindings if one.scope.sort == "class"}
    for own in classes.values() if len(classes) > 1 else ():
        for base in _bases(source, own.node, classes):
            mine = [one for one in bindings if one.scope.node.id == own.node.id]
            theirs = [one for one in bindings if one.scope.node.id == base.node.id]
            yield _unknown(theirs[0], mine[0])
            if any(one.attribute for one in theirs) or any(map(_is_set_later, mine)):
                yield _unknown(mine[0], theirs[0])


def _is_set_later(binding: Binding) -> bool:
    """Whether an attribute gets its value by a method that is not called for each object."""
    return binding.attribute and binding.within.name != "__init__"


def _unknown(binding: Binding, other: Binding) -> Binding:
    return Binding(other.name, binding.scope, "unknown", other.within, why=OVERRIDDEN)


def _bases(source: Source, owner: Node, classes: dict[int, Scope]) -> Iterator[Scope]:
    """Yield those of the classes that a class is derived from, directly or not."""
    pending, seen = [owner], {owner.id}
    while pending:
        listed = pending.pop().child_by_field_name("superclasses")
        words = {source.text(one).rpartition(".")[2] for one in elements(listed)} if listed else ()
        for stack in source.stacks(sorted(words)):
            found = stack[-2]
            if found.type != "class_definition" or found.id in seen:
                continue
            if same(found.child_by_field_name("name"), stack[-1]):
                seen.add(found.id)
                pending.append(found)
                if found.id in classes:
                    yield classes[found.id]
