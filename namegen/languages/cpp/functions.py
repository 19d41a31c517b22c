"""What functions of a C++ file give: those that always return one value."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tree_sitter import Node

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.classes import Class, classes_of, every_class
from namegen.languages.cpp.declarators import INDIRECT
from namegen.languages.cpp.expressions import expression
from namegen.languages.cpp.openings import names_of, tries
from namegen.languages.cpp.scopes import Scope, function_declarator
from namegen.languages.cpp.types import kept
from namegen.languages.sources import Source, elements, field_of, occurrences, span_of
from namegen.model.facts import Expression, Path, Unknown


def returned(source: Source, binding: Binding, function: Node) -> Expression:
    """Return what a function always gives, if nothing can override it."""
    value = _only_return(source, function)
    if value is None or _may_be_overridden(source, binding, function):
        called = source.text(binding.name)
        return Unknown(f"it is made at run time by `{called}()`", span_of(binding.name))
    within = Scope("region", function, binding.within)
    if binding.path[: len(binding.within.path)] == binding.within.path:
        owner = binding.path[len(binding.within.path) : -1]
        around = Scope("type", function, binding.within, owner) if owner else binding.within
        within = Scope("region", function, around)
    body = function.child_by_field_name("body")
    within = Scope("region", body, within) if body is not None else within
    kind, declarator = function.child_by_field_name("type"), function_declarator(function)
    outer = function.child_by_field_name("declarator")
    points = outer is not None and outer.type in INDIRECT
    for one in declarator.children if declarator is not None else ():
        behind = elements(one) if one.type == "trailing_return_type" else []
        kind = behind[0] if behind else kind
    return kept(source, within, kind, expression(source, within, value), brackets=points)


def _only_return(source: Source, function: Node) -> Node | None:
    """Return the value of a function whose body ends in its one ``return``."""
    body = function.child_by_field_name("body")
    last = next(reversed(elements(body)), None) if body is not None else None
    if body is None or last is None or last.type != "return_statement":
        return None
    inside = source.data[body.start_byte : body.end_byte]
    several = sum(1 for _ in occurrences(inside, "return")) > 1
    return next(iter(elements(last)), None) if not several else None


def _may_be_overridden(source: Source, binding: Binding, function: Node) -> bool:
    """Whether a derived class may give the function another body, as far as the file tells.

    The class says ``virtual``, and not a body that stands outside of it; then other files may
    derive from it too. A function is virtual without the word, if one of this name is in a base
    class: then it counts whether the file has a derived class with another one.
    """
    owner, name = binding.path[:-1], source.text(binding.name)
    own = [one for one in classes_of(source, owner[-1]) if one.path == owner] if owner else []
    if not own:
        scope = binding.within.path
        return owner != scope and not _is_space(source, owner)
    words = {word for one in (*_declaring(own, name), function) for word in _head(source, one)}
    if words & {"static", "final"} or any("final" in _head(source, one.node) for one in own):
        return False
    if "virtual" in words and "override" not in words:
        return True
    in_base = "override" in words or _in_base(source, binding, own, name)
    return in_base and any(True for _ in _declaring(_derived(source, owner[-1]), name))


def _derived(source: Source, word: str) -> list[Class]:
    """Return the classes of the file that are or may be derived from one of this name."""
    every = [*every_class(source)]
    found, pending = dict[Path, Class](), {*names_of(source, word)}
    while pending:
        more = [one for one in every if one.path not in found and _has_base(one, pending)]
        found |= {one.path: one for one in more}
        pending = {name for one in more for name in names_of(source, one.path[-1])}
    return [*found.values()]


def _has_base(one: Class, words: set[str]) -> bool:
    return one.dependent or any(base[-1] in words for base in one.bases)


def _declaring(some: Iterable[Class], name: str) -> Iterator[Node]:
    """Yield the statements of classes that declare a function of a name."""
    for one in some:
        for statement in one.body:
            declarator = function_declarator(statement)
            named = field_of(declarator, "declarator")
            if named is not None and named.text == name.encode():
                yield statement


def _head(source: Source, node: Node) -> set[str]:
    """Return the words of a function or class before its body."""
    body = node.child_by_field_name("body")
    end = body.start_byte if body is not None else node.end_byte
    text = source.data[node.start_byte : end].decode("utf-8", "replace")
    return {*text.replace(")", " ").replace(";", " ").replace(":", " ").split()}


def _in_base(source: Source, binding: Binding, own: list[Class], name: str) -> bool:
    """Whether a base class has a function of a name, or may have one because it is not known."""
    pending, seen = [*own], set[Path]()
    while pending:
        one = pending.pop()
        if one.dependent:
            return True
        for base in one.bases:
            paths = {*tries(source, binding.within, base)}
            known = [each for each in classes_of(source, base[-1]) if each.path in paths]
            if not known or next(_declaring(known, name), None) is not None:
                return True
            pending += [each for each in known if each.path not in seen]
            seen |= {each.path for each in known}
    return False


def _is_space(source: Source, path: Path) -> bool:
    """Whether the last word of a path is a namespace in the file."""
    kinds = {"namespace_definition", "nested_namespace_specifier"}
    return any(stack[-2].type in kinds for stack in source.stacks([path[-1]]) if len(stack) > 1)
