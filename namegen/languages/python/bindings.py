"""Where a Python name gets a value: assignments, loops, parameters, classes, imports."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.definitions import HIDES
from namegen.languages.python.altering import LOOPS, PATTERNS, SETTERS
from namegen.languages.python.binding import FUNCTION, Binding, Way
from namegen.languages.python.changes import Change, ChangeFinder, laid, may_hold, own_class, shared
from namegen.languages.python.following import Following
from namegen.languages.python.scopes import Scope, scope_at, scope_of
from namegen.languages.sources import Source, Stack, elements, is_field, named_child, place_in, same

_PARAMETERS = frozenset(
    {
        "parameters",
        "lambda_parameters",
        "default_parameter",
        "typed_parameter",
        "typed_default_parameter",
        "list_splat_pattern",
        "dictionary_splat_pattern",
    }
)


_NAMED = frozenset({"attribute", "identifier", "subscript"})
"""Values that are looked up elsewhere, where parts of them may be known."""
_OWNERS = frozenset({"class_definition", "function_definition", "lambda"})


def bindings_of(source: Source, word: str, following: Following) -> list[Binding]:
    """Return every binding of a word in the file, in every scope, in order."""
    found: list[Binding] = []
    stacks: list[Stack] = []
    used: set[int] = set()
    borrowed: dict[int, Scope] = {}
    for stack in source.stacks([word]):
        if stack[-1].type != "identifier" or len(stack) < 2:
            continue
        if stack[-2].type in {"global_statement", "nonlocal_statement"}:
            scope = scope_of(source, stack)
            borrowed[scope.node.id] = _lender(scope, stack[-2].type == "global_statement")
            continue
        binding = _binding(source, stack)
        if binding is None:
            used |= _class_using(source, stack)
        elif binding.scope.node.id in used and not binding.attribute:
            found.append(Binding(stack[-1], binding.scope, "unknown", binding.scope, why=HIDES))
        found += [binding] if binding is not None else []
        stacks.append(stack.copy())
    bound = [_given_back(binding, borrowed) for binding in found]
    changes = _changes(source, stacks, bound, following) if bound else []
    return [*bound, *laid(source, changes, bound), *shared(source, bound)]


def _changes(
    source: Source, stacks: Sequence[Stack], bound: Sequence[Binding], following: Following
) -> list[Change]:
    """Return the changes of a name by its uses."""
    # A text cannot be changed by those that get it.
    holds = any(may_hold(source, one, following) for one in bound)
    finder = ChangeFinder(source, following if holds else None)
    bindings = {one.name.id: one for one in bound}
    classes: dict[str, Scope | None] = {}
    found = (
        finder.by_twins(stack, bindings[stack[-1].id])
        if stack[-1].id in bindings
        else finder.at(stack)
        for stack in stacks
    )
    return [_of_kin(source, change, classes) for change in found if change is not None]


def _of_kin(source: Source, change: Change, classes: dict[str, Scope | None]) -> Change:
    """Return a change of an object's attribute with the object's class, where that is known."""
    if change.whose is None:
        return change
    word = source.text(change.whose)
    if word not in classes:
        classes[word] = _class_of(source, word)
    return replace(change, kin=classes[word])


def _class_of(source: Source, word: str) -> Scope | None:
    """Return the one class of this file that a word names, or that all it names are made of."""
    bound = _plainly_bound(source, word)
    makers = {
        source.text(one.value.child_by_field_name("function") or one.name)
        if one.way == "value" and one.value is not None and one.value.type == "call"
        else ""
        for one in bound
    }
    if len(makers) == 1 and bound[0].way != "class":
        bound = _plainly_bound(source, makers.pop())
    one = bound[0] if len(bound) == 1 else None
    if one is None or one.way != "class" or one.value is None:
        return None
    return scope_at(source, one.scope, one.value)


def _plainly_bound(source: Source, word: str) -> list[Binding]:
    """Return the bindings of a word by itself in the whole file, whatever changes it."""
    stacks = source.stacks([word]) if word.isidentifier() else ()
    found = (_binding(source, stack) for stack in stacks if stack[-1].type == "identifier")
    return [one for one in found if one is not None and not one.attribute]


def _class_using(source: Source, stack: Stack) -> set[int]:
    """Return the class in whose body, outside of functions, a word is used by itself."""
    if stack[-2].type == "attribute" and not same(stack[-2].child(0), stack[-1]):
        return set()
    inner = (one.type for one in reversed(stack) if one.type in _OWNERS)
    if next(inner, None) != "class_definition":  # most uses lie in functions, or in no class
        return set()
    scope = scope_of(source, stack)
    return {scope.node.id} if scope.sort == "class" else set()


def _lender(scope: Scope, is_global: bool) -> Scope:
    """Return the scope that a ``global`` or ``nonlocal`` name really belongs to."""
    outer = scope
    while outer.outer is not None:
        outer = outer.outer
        if not is_global and outer.sort == "function":
            return outer
    return outer


def _given_back(binding: Binding, borrowed: dict[int, Scope]) -> Binding:
    scope = borrowed.get(binding.scope.node.id)
    if scope is None or binding.way == "parameter" or binding.attribute:
        return binding
    return replace(binding, scope=scope, declared=None)


def _binding(source: Source, stack: Stack) -> Binding | None:  # noqa: PLR0911 - one per form
    """Return what the last node of the stack binds, or None where it is only used."""
    leaf, parent = stack[-1], stack[-2]
    kind = parent.type
    if kind == "assignment":
        return _assigned(source, stack, leaf, parent)
    if kind == "attribute":
        return _own_attribute(source, stack)
    if kind in PATTERNS:
        return _unpacked(source, stack)
    if kind in _PARAMETERS:
        return _parameter(source, stack)
    scope = scope_of(source, stack)
    if kind in {"class_definition", "function_definition"}:
        return _defined(source, scope, leaf, parent)
    first = same(parent.child(0), leaf)
    if kind == "named_expression" and first:
        owner = _beyond_comprehensions(scope)
        return Binding(leaf, owner, "value", scope, parent.child_by_field_name("value"))
    if kind in LOOPS and is_field(parent, "left", leaf):
        right = parent.child_by_field_name("right")
        return Binding(leaf, scope, "each", scope, right, loop=_statement(parent))
    if kind in {"as_pattern_target", "augmented_assignment"} and first:
        return Binding(leaf, scope, "unknown", scope, why="it is made at run time")
    if kind == "aliased_import" or (kind == "dotted_name" and _imports(stack)):
        return Binding(leaf, scope, "import", scope, why="it is imported and assigned too")
    if kind == "dotted_name" and stack[-3].type == "case_pattern" and parent.named_child_count == 1:
        return Binding(leaf, scope, "unknown", scope, why="it is matched at run time")
    return None


def _assigned(source: Source, stack: Stack, target: Node, parent: Node) -> Binding | None:
    """Return the binding of ``target`` by an assignment; ``a = b = value`` gives value to both."""
    if not is_field(parent, "left", target):
        return None
    scope = scope_of(source, stack)
    declared = parent.child_by_field_name("type")
    value = parent.child_by_field_name("right")
    while value is not None and value.type == "assignment":
        value = value.child_by_field_name("right")
    way: Way = "value" if value is not None else "declared"
    return Binding(stack[-1], scope, way, scope, value, declared=declared)


def _own_attribute(source: Source, stack: Stack) -> Binding | None:
    """Return the binding by ``self.x = value``."""
    parent, above = stack[-2], stack[-3]
    named = is_field(parent, "attribute", stack[-1])
    if not named or above.type not in SETTERS:
        return None
    within = scope_of(source, stack)
    owner = own_class(source, stack, within)
    if owner is None:
        return None
    if above.type == "assignment":
        found = _assigned(source, stack, parent, above)
        if found is None:
            return None
        return Binding(
            stack[-1], owner, found.way, within, found.value, "", found.declared, attribute=True
        )
    if above.type == "for_statement" and not is_field(above, "left", parent):
        return None
    return Binding(stack[-1], owner, "unknown", within, why="it is set at run time", attribute=True)


def _unpacked(source: Source, stack: Stack) -> Binding:
    """Return the binding by ``a, b = one, two`` or by ``for a, b in rows``."""
    leaf, pattern, above = stack[-1], stack[-2], stack[-3]
    scope = scope_of(source, stack)
    right = above.child_by_field_name("right")
    if above.type == "assignment" and right is not None:
        names, values = elements(pattern), elements(right)
        written_out = right.type in {"expression_list", "tuple", "list"}
        splats = any("splat" in node.type for node in (*names, *values))
        if written_out and len(names) == len(values) and not splats:
            place = next(i for i, name in enumerate(names) if same(name, leaf))
            return Binding(leaf, scope, "value", scope, values[place])
    taking: list[str] = []
    place = len(stack) - 1
    while stack[place - 1].type in PATTERNS:
        at = place_in(stack[place - 1], stack[place])
        unpacks = any(part.type == "list_splat_pattern" for part in elements(stack[place - 1]))
        taking.insert(0, f"[{at}]" if not unpacks else "")
        place -= 1
    owner = stack[place - 1]
    right = owner.child_by_field_name("right")
    if owner.type in LOOPS and all(taking):
        statement = _statement(owner)
        return Binding(leaf, scope, "each", scope, right, taking=tuple(taking), loop=statement)
    if owner.type == "assignment" and all(taking) and right is not None and right.type in _NAMED:
        return Binding(leaf, scope, "value", scope, right, taking=tuple(taking))
    return Binding(leaf, scope, "unknown", scope, why="it is unpacked at run time")


def _statement(loop: Node) -> Node | None:
    return loop if loop.type == "for_statement" else None


def _parameter(source: Source, stack: Stack) -> Binding | None:
    """Return the binding of a parameter; its default and its type bind nothing."""
    leaf, parent = stack[-1], stack[-2]
    if parent.type not in {"parameters", "lambda_parameters"} and not same(
        next(iter(elements(parent)), None), leaf
    ):
        return None
    for above, node in zip(reversed(stack[:-1]), reversed(stack), strict=False):
        if node.type in {"function_definition", "lambda"}:
            outer = scope_of(source, stack)
            scope = scope_at(source, outer, node, above)
            of = f" of `{scope.name}`" if scope.name else ""
            return Binding(leaf, scope, "parameter", outer, why=f"it is a parameter{of}")
        if node.type in {"block", "module"}:
            break
    # `a, *rest = ...` uses the same node as `*rest` in a parameter list.
    scope = scope_of(source, stack)
    return Binding(leaf, scope, "unknown", scope, why="it is unpacked at run time")


def _defined(source: Source, scope: Scope, leaf: Node, parent: Node) -> Binding | None:
    if not is_field(parent, "name", leaf):
        return None
    if parent.type == "class_definition":
        return Binding(leaf, scope, "class", scope, parent, why="it is a class")
    return Binding(leaf, scope, "function", scope, parent, why=FUNCTION)


def _imports(stack: Stack) -> bool:
    """Whether the leaf is the name that an import statement binds, not one it comes from."""
    leaf, parent, above = stack[-1], stack[-2], stack[-3]
    if above.type == "import_statement":
        return same(named_child(parent, 0), leaf)
    if above.type == "import_from_statement":
        return not is_field(above, "module_name", parent)
    return False


def _beyond_comprehensions(scope: Scope) -> Scope:
    while scope.sort == "comprehension" and scope.outer is not None:
        scope = scope.outer
    return scope
