"""Changes of Python names besides plain assignments, laid at what they may change.

``names.append("bow")`` changes a list, ``boat.name = "bow"`` an attribute of whatever class,
and a class with a base shares attributes with it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.definitions import CHANGED, HANDED_ON, OVERRIDDEN
from namegen.languages.python.altering import SETTERS, is_changed, other_names
from namegen.languages.python.binding import Binding
from namegen.languages.python.scopes import Scope, own_name, scope_of
from namegen.languages.sources import Source, Stack, elements, occurrences, same, span_of
from namegen.model.places import Span


class Change(Struct, frozen=True):
    """One place that changes a name: a plain one, one of the own object, one of any object."""

    name: Node
    within: Scope
    of: Scope | Literal["name", "object"]
    why: str = CHANGED


def change_at(source: Source, stack: Stack) -> Change | None:
    """Return the change of the name that the last node of the stack is, but for assignments."""
    above = stack[-2]
    if above.type != "attribute" or not same(above.child_by_field_name("attribute"), stack[-1]):
        why = _altered(source, stack)
        return Change(stack[-1], scope_of(source, stack), "name", why) if why else None
    is_set = _is_set(stack)
    why = CHANGED if is_set else _altered(source, stack[:-1])
    if not why:
        return None
    scope = scope_of(source, stack)
    own = own_class(source, stack, scope)
    if not is_set:
        return Change(stack[-1], scope, own or "object", why)
    return Change(stack[-1], scope, "object") if own is None else None


def _altered(source: Source, stack: Stack) -> str:
    """Return why what a use stands for is not what it was given first; empty if it is."""
    if is_changed(source, stack):
        return CHANGED
    return HANDED_ON if _is_changed_as(source, other_names(stack)) else ""


def _is_changed_as(source: Source, others: Iterable[Node]) -> bool:
    """Whether a list is changed by other names, or by those that get it from these in turn.

    A name of its own counts in its function alone, an attribute in the whole file.
    """
    pending, seen = [(source.text(one), _reach(source, one)) for one in others], set[str]()
    while pending:
        word, reach = pending.pop()
        if word in seen:
            continue
        seen.add(word)
        within = source.data[reach.start : reach.end]
        places = (
            Span(reach.start + at.start, reach.start + at.end) for at in occurrences(within, word)
        )
        for stack in source.above(places):
            field = stack[-2].child_by_field_name("attribute")
            whole = stack[:-1] if same(field, stack[-1]) else stack
            if is_changed(source, whole):
                return True
            pending += [(source.text(one), _reach(source, one)) for one in other_names(whole)]
    return False


def _reach(source: Source, name: Node) -> Span:
    """Return where a name is the same: in the function around it, an attribute anywhere."""
    above = name.parent
    while above is not None and above.type not in {"attribute", "function_definition"}:
        above = above.parent
    is_local = above is not None and above.type == "function_definition"
    return span_of(above) if above is not None and is_local else Span(0, len(source.data))


def _is_set(stack: Stack) -> bool:
    """Whether the attribute that the last node names gets a value."""
    attribute, above = stack[-2], stack[-3]
    if above.type in {"assignment", "augmented_assignment", "for_statement"}:
        return same(above.child_by_field_name("left"), attribute)
    return above.type in SETTERS


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


def laid(changes: Sequence[Change], bindings: Sequence[Binding]) -> Iterator[Binding]:
    """Yield what changes bind: the name around them that they mean, or all that they may mean."""
    classes = {one.scope.node.id: one.scope for one in bindings if one.scope.sort == "class"}
    for change in changes:
        for scope in _meant(change, bindings, list(classes.values())):
            attribute = change.of != "name"
            yield Binding(
                change.name, scope, "unknown", change.within, why=change.why, attribute=attribute
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

    Where it is set as ``self.name`` in the base outside of ``__init__``, or only later in the
    derived class, it is not known in that one either.
    """
    bound: dict[int, list[Binding]] = {}
    for one in bindings:
        if one.scope.sort == "class":
            bound.setdefault(one.scope.node.id, []).append(one)
    for mine in bound.values() if len(bound) > 1 else ():
        base = _nearest_base(source, mine[0].scope.node, bound)
        theirs = bound[base] if base is not None else []
        if theirs:
            yield _unknown(theirs[0], mine[0])
            if any(map(_is_set_later, (*theirs, *mine))) or _is_set_first(theirs, mine):
                yield _unknown(mine[0], theirs[0])


def _is_set_first(theirs: Sequence[Binding], mine: Sequence[Binding]) -> bool:
    """Whether the base's ``__init__`` sets what the derived class only has as its default."""
    return any(one.attribute for one in theirs) and not any(one.attribute for one in mine)


def _is_set_later(binding: Binding) -> bool:
    """Whether an attribute gets its value by a method that is not called for each object."""
    return binding.attribute and binding.within.name != "__init__"


def _unknown(binding: Binding, other: Binding) -> Binding:
    return Binding(other.name, binding.scope, "unknown", other.within, why=OVERRIDDEN)


def _nearest_base(
    source: Source, owner: Node, bound: Mapping[int, Sequence[Binding]]
) -> int | None:
    """Return the nearest class of some that a class is derived from, directly or not."""
    pending, seen = [owner], {owner.id}
    for one in pending:
        listed = one.child_by_field_name("superclasses")
        words = (
            {source.text(base).rpartition(".")[2] for base in elements(listed)} if listed else ()
        )
        for stack in source.stacks(sorted(words)):
            found = stack[-2]
            is_new = found.type == "class_definition" and found.id not in seen
            if is_new and same(found.child_by_field_name("name"), stack[-1]):
                if found.id in bound:
                    return found.id
                seen.add(found.id)
                pending.append(found)
    return None
