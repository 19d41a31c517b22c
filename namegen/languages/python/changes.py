"""Changes of Python names besides plain assignments, laid at what they may change.

``names.append("bow")`` changes a list, ``boat.name = "bow"`` an attribute of whatever class,
and a class with a base shares attributes with it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.definitions import CHANGED, HANDED_ON, OVERRIDDEN
from namegen.languages.python.altering import SETTERS, Tie, changed_at, handed_on, targets
from namegen.languages.python.binding import Binding
from namegen.languages.python.following import Following
from namegen.languages.python.scopes import Scope, own_name, scope_of
from namegen.languages.python.tables import flat, is_plain
from namegen.languages.sources import Source, Stack, elements, is_field


class Change(Struct, frozen=True):
    """One place that changes a name: a plain one, one of the own object, one of any object.

    ``deep``: not what the name stands for is changed, only what that holds. ``whose`` is the
    name of the object that gets an attribute, ``kin`` its class where that is known.
    """

    name: Node
    within: Scope
    of: Scope | Literal["name", "object"]
    why: str = CHANGED
    deep: bool = False
    whose: Node | None = None
    kin: Scope | None = None


class ChangeFinder:
    """Finds the changes of one name in a file, by those that get it if they are followed."""

    def __init__(self, source: Source, following: Following | None) -> None:
        self._source = source
        self._following = following

    def at(self, stack: Stack) -> Change | None:
        """Return the change of the name that the last node of the stack is, but for assignments."""
        above, source = stack[-2], self._source
        if above.type != "attribute" or not is_field(above, "attribute", stack[-1]):
            return self._in_place(stack, stack, "name")
        scope = scope_of(source, stack)
        own = own_class(source, stack, scope)
        if not _is_set(stack):
            return self._in_place(stack, stack[:-1], own or "object")
        whose = above.child_by_field_name("object")
        named = whose if whose is not None and whose.type == "identifier" else None
        return Change(stack[-1], scope, "object", whose=named) if own is None else None

    def by_twins(self, stack: Stack, binding: Binding) -> Change | None:
        """Return the change of what ``a = b = []`` gives to the last node, by its other name."""
        place = len(stack) - (3 if binding.attribute else 2)
        if self._following is None or stack[place].type != "assignment":
            return None
        value = stack[place].child_by_field_name("right")
        if "assignment" not in {value.type if value is not None else "", stack[place - 1].type}:
            return None
        chain = stack[: place + 1]
        while value is not None and value.type == "assignment":
            chain.append(value)
            value = value.child_by_field_name("right")
        # With its own name among them it is asked once for all names that the value gets.
        depth = self._following.depth_of(chain[-1], targets(chain, len(chain) - 1, Tie()))
        of: Scope | Literal["name"] = binding.scope if binding.attribute else "name"
        return Change(stack[-1], binding.within, of, HANDED_ON, depth > 1) if depth else None

    def _in_place(
        self, stack: Stack, whole: Stack, of: Scope | Literal["name", "object"]
    ) -> Change | None:
        """Return the change of a list or table by a use of it, or by those who get it there."""
        depth, why = min(changed_at(self._source, whole), default=0), CHANGED
        if depth != 1 and self._following is not None:
            later = self._following.depth(handed_on(self._source, whole))
            if later and (later < depth or not depth):
                depth, why = later, HANDED_ON
        if not depth:
            return None
        return Change(stack[-1], scope_of(self._source, stack), of, why, depth > 1)


def may_hold(source: Source, binding: Binding, following: Following) -> bool:
    """Whether a binding gives what others may change, and what is known but for that."""
    value = binding.value
    if binding.way == "import":
        return True
    if value is None or binding.way not in {"value", "each"}:
        return False
    if binding.way == "value" and value.type == "call":
        # What functions of other files give is not known anyway.
        function = value.child_by_field_name("function")
        return function is not None and following.defines(source.text(function))
    return not is_plain(value)


def _is_set(stack: Stack) -> bool:
    """Whether the attribute that the last node names gets a value."""
    attribute, above = stack[-2], stack[-3]
    if above.type in {"assignment", "augmented_assignment", "for_statement"}:
        return is_field(above, "left", attribute)
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


def changed_outside(source: Source, word: str) -> Node | None:
    """Return where a file changes an attribute that another one may have given its value.

    What a class without bases does to its own object is left out.
    """
    for stack in source.stacks([word]):
        if len(stack) < 3 or not is_field(stack[-2], "attribute", stack[-1]):
            continue
        if not _is_set(stack) and not any(changed_at(source, stack[:-1])):
            continue
        own = own_class(source, stack, scope_of(source, stack))
        if own is None or own.node.child_by_field_name("superclasses") is not None:
            return stack[-1]
    return None


def laid(
    source: Source, changes: Sequence[Change], bindings: Sequence[Binding]
) -> Iterator[Binding]:
    """Yield what changes bind: the name around them that they mean, or all that they may mean."""
    given = _by_scope(bindings)
    classes = {one.scope.node.id: one.scope for one in bindings if one.scope.sort == "class"}
    above = {owner: {one.id for one in _bases(source, classes[owner].node)} for owner in classes}
    told: set[tuple[int, str]] = set()
    for change in changes:
        for scope in _meant(source, change, given, classes, above):
            attribute, key = change.of != "name", (scope.node.id, change.why)
            if (attribute and key in told) or _is_spared(change, given[scope.node.id]):
                continue
            told.add(key)
            yield Binding(
                change.name, scope, "unknown", change.within, why=change.why, attribute=attribute
            )


def _by_scope(bindings: Sequence[Binding]) -> dict[int, list[Binding]]:
    found: dict[int, list[Binding]] = {}
    for one in bindings:
        found.setdefault(one.scope.node.id, []).append(one)
    return found


def _meant(
    source: Source,
    change: Change,
    given: Mapping[int, Sequence[Binding]],
    classes: Mapping[int, Scope],
    above: Mapping[int, Set[int]],
) -> Iterable[Scope]:
    """Return the scopes of the name that a change may be of; ``above`` are the classes' bases."""
    if change.of == "object":
        return classes.values() if change.kin is None else _related(source, change, classes, above)
    if change.of != "name":
        own = classes.get(change.of.node.id)
        return classes.values() if own is None else [own]  # else it is inherited
    scope: Scope | None = change.within
    while scope is not None:
        if any(not one.attribute for one in given.get(scope.node.id, ())):
            return [scope]
        scope = scope.outer
    return []


def _related(
    source: Source, change: Change, classes: Mapping[int, Scope], above: Mapping[int, Set[int]]
) -> Iterator[Scope]:
    """Yield the classes that share attributes with the one of an object: derived ones and bases."""
    assert change.kin is not None
    owner = change.kin.node
    bases = above[owner.id] if owner.id in above else {one.id for one in _bases(source, owner)}
    for place, scope in classes.items():
        if place == owner.id or place in bases or owner.id in above[place]:
            yield scope


def _is_spared(change: Change, given: Sequence[Binding]) -> bool:
    """Whether a change leaves a name as it was that has some bindings in its scope.

    A deep one does nothing to a list of texts. What is a parameter is unknown for that alone,
    but for those of ``__init__``, which objects may keep.
    """
    if change.why == HANDED_ON and all(
        one.way == "parameter" and one.scope.name != "__init__" for one in given
    ):
        return True
    return change.deep and all(
        one.way == "value" and one.value is not None and flat(one.value) for one in given
    )


def shared(source: Source, bindings: Sequence[Binding]) -> Iterator[Binding]:
    """Yield that an attribute is not known: of a class with a derived one that binds it too.

    Where it is set as ``self.name`` in the base outside of ``__init__``, or only later in the
    derived class, it is not known in that one either.
    """
    bound = _by_scope([one for one in bindings if one.scope.sort == "class"])
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
    return next((one.id for one in _bases(source, owner) if one.id in bound), None)


def _bases(source: Source, owner: Node) -> Iterator[Node]:
    """Yield the classes of the file that a class is derived from, the nearest first."""
    pending, seen = [owner], {owner.id}
    for one in pending:
        listed = one.child_by_field_name("superclasses")
        words = (
            {source.text(base).rpartition(".")[2] for base in elements(listed)} if listed else ()
        )
        for stack in source.stacks(sorted(words)):
            found = stack[-2]
            is_new = found.type == "class_definition" and found.id not in seen
            if is_new and is_field(found, "name", stack[-1]):
                yield found
                seen.add(found.id)
                pending.append(found)
