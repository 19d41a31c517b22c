"""Scopes of Python: which class, function or comprehension a node lies in."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.sources import Source, is_field, named_child
from namegen.model.facts import MADE, Path

Sort = Literal["module", "class", "function", "comprehension"]

_SORTS: dict[str, Sort] = {
    "class_definition": "class",
    "function_definition": "function",
    "lambda": "function",
    "list_comprehension": "comprehension",
    "set_comprehension": "comprehension",
    "dictionary_comprehension": "comprehension",
    "generator_expression": "comprehension",
}


class Scope(Struct, frozen=True):
    """One scope with the scopes around it."""

    sort: Sort
    node: Node
    outer: Scope | None = None
    name: str = ""
    marks: frozenset[str] = frozenset()
    """The decorators of a function that are plain names."""
    loops: tuple[Node, ...] = ()
    """The ``for`` statements of this scope in whose bodies a place lies, outermost first."""

    @property
    def path(self) -> Path:
        """What names in this scope are prefixed with."""
        if self.sort == "module":
            return ()
        if self.sort == "class" and self.outer:
            return (*self.outer.path, self.name)
        return (_word(self.node),)

    @property
    def readable(self) -> Path:
        """The names of the classes and functions, outermost first."""
        names: list[str] = []
        scope: Scope | None = self
        while scope is not None:
            if scope.name:
                names.append(scope.name)
            scope = scope.outer
        return tuple(reversed(names))

    @property
    def function(self) -> Scope | None:
        """The innermost named function, this one included."""
        scope: Scope | None = self
        while scope is not None and not (scope.sort == "function" and scope.name):
            scope = scope.outer
        return scope


def scope_of(source: Source, stack: list[Node]) -> Scope:
    """Return the scope in which the last node of the stack is worked out.

    Decorators, defaults and annotations of a function, and the bases of a class,
    belong to the scope around it.
    """
    scope = Scope("module", stack[0])
    for place, (node, child) in enumerate(pairwise(stack[1:])):
        if node.type == "for_statement" and is_field(node, "body", child):
            scope = replace(scope, loops=(*scope.loops, node))
        sort = _SORTS.get(node.type)
        if sort is None:
            continue
        body = None if sort == "comprehension" else node.child_by_field_name("body")
        if body is None or child.id == body.id:
            marks = _marks(source, stack[place]) if sort == "function" else frozenset[str]()
            scope = Scope(sort, node, scope, _name(source, node), marks)
    return scope


def scope_at(source: Source, scope: Scope, node: Node, above: Node | None = None) -> Scope:
    """Return the scope that a class or function below ``scope`` opens, ``above`` it if given."""
    marks = _marks(source, above) if above is not None else frozenset[str]()
    return Scope(_SORTS[node.type], node, scope, _name(source, node), marks)


def _marks(source: Source, above: Node) -> frozenset[str]:
    if above.type != "decorated_definition":
        return frozenset()
    marks = (one for one in above.named_children if one.type == "decorator")
    return frozenset(source.text(one).strip("@ ") for one in marks)


def _name(source: Source, node: Node) -> str:
    name = node.child_by_field_name("name")
    return source.text(name) if name is not None else ""


def own_name(source: Source, method: Scope) -> str | None:
    """Return what a method calls its object or class (``self``): its first parameter."""
    if method.outer is None or method.outer.sort != "class" or method.sort != "function":
        return None
    if "staticmethod" in method.marks:
        return None
    parameters = method.node.child_by_field_name("parameters")
    first = named_child(parameters, 0) if parameters is not None else None
    if first is not None and first.type == "typed_parameter":
        first = named_child(first, 0)
    return source.text(first) if first is not None and first.type == "identifier" else None


def tries(source: Source, scope: Scope, words: Path) -> tuple[Path, ...]:
    """Return the paths that a dotted name may mean at this place, innermost scope first."""
    if len(words) > 1:
        around: Scope | None = scope
        while around is not None:
            if around.outer is not None and own_name(source, around) == words[0]:
                made = () if "classmethod" in around.marks else (MADE,)
                return ((*around.outer.path, *made, *words[1:]),)
            around = around.outer
    found = [(_word(loop), *words) for loop in reversed(scope.loops)]
    # A bare name in a class body is not inherited, so the class is named by its place.
    innermost = (_word(scope.node),) if scope.sort == "class" else scope.path
    found.append((*innermost, *words))
    outer, called_later = scope.outer, _runs_later(scope)
    while outer is not None:
        # When a function runs, a loop around it may have gone on to its next element.
        loops = () if called_later else outer.loops
        found += [(_word(loop), *words) for loop in reversed(loops)]
        if outer.sort != "class":
            found.append((*outer.path, *words))
        called_later |= _runs_later(outer)
        outer = outer.outer
    return tuple(found)


def _runs_later(scope: Scope) -> bool:
    """Whether what lies in a scope may run when the code around it has gone on."""
    return scope.sort == "function" or scope.node.type == "generator_expression"


def _word(node: Node) -> str:
    return f"@{node.start_byte}"
