"""What a dotted path of a Java file stands for."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.java.altering import JavaAlterations
from namegen.languages.java.bindings import JavaBindings
from namegen.languages.java.expressions import dotted, expression
from namegen.languages.java.families import JavaFamilies
from namegen.languages.java.scopes import tries
from namegen.languages.java.types import modifiers_of, type_words
from namegen.languages.members import MemberFinder
from namegen.languages.owned_names import Binding
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, elements, same, span_of
from namegen.model.facts import Definition, Expression, Path, Ref, Unknown

_CONSTRUCTOR = "constructor_declaration"
_NO_TEXTS = {"constant": "an enum constant is not text itself"}


class Definitions(MemberFinder):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    ANONYMOUS = "object_creation_expression"
    BINDINGS = JavaBindings
    NO_TEXTS = _NO_TEXTS
    EXPRESSION = expression

    def __init__(self, source: Source) -> None:
        super().__init__(JavaAlterations(source), JavaFamilies(source))

    def _sought(self, path: Path) -> list[Definition]:
        if path[0].startswith("@"):
            return self._valued(self._in_region(path), path[1:], path) or self._of_anonymous(path)
        root = self.owned(path[0].removesuffix("()"), self.source.root.id)
        bound = [one for one in root if one.way == "type"]
        return self._valued(bound, path, path)

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a word inside the method or block at a byte: ("@120", "name")."""
        is_local = len(path) == 2 and path[0].startswith("@")
        return self._in_region(path) if is_local else []

    def _below(self, binding: Binding, rest: Path, path: Path) -> list[Definition]:
        """Return a member of an enum constant or of an object of a declared type."""
        span = span_of(binding.name)
        if binding.way == "constant" and binding.value is not None:
            value = self._of_object(binding.owner, binding.value, binding.within, rest)
            return [Definition(path, value or Unknown(RUN_TIME, span), span)]
        value = self._of_made(binding, rest)
        if value is not None:
            return [Definition(path, value, span)]
        words = type_words(self.source, binding.declared)
        if words is None and binding.value is not None:
            words = dotted(self.source, binding.value)
        if words is None:
            return [Definition(path, Unknown(RUN_TIME, span), span)]
        return [Definition(path, Ref(tries(binding.within, (*words, *rest)), span), span)]

    def _of_made(self, binding: Binding, rest: Path) -> Expression | None:
        """Return a member of the object of this file's own class that a variable is made with."""
        made = binding.value
        if binding.way != "value" or made is None or made.type != "object_creation_expression":
            return None
        words = type_words(self.source, made.child_by_field_name("type"))
        types = [one for one in self.bindings(words[-1]) if one.way == "type"] if words else []
        owner = types[0].value if len(types) == 1 else None
        if owner is None or any(one.type == "class_body" for one in made.named_children):
            return None
        return self._of_object(owner.id, made, binding.within, rest)

    def _of_object(self, owner: int, made: Node, within: Scope, rest: Path) -> Expression | None:
        """Return what ``BOW.id`` or ``BOW.getId()`` gives: an argument of the constructor."""
        if len(rest) != 1 or made.child_by_field_name("body") is not None:
            return None
        word = rest[0]
        if word.endswith("()"):
            methods = self.members_named(owner, word)
            returned = self._returned_name(methods[0]) if len(methods) == 1 else None
            if returned is None:
                return None
            word = returned
        arguments = elements(made.child_by_field_name("arguments"))
        given_to = {"value", "assigned", "unknown"}
        bound = [one for one in self.members_named(owner, word) if one.way in given_to]
        if len(bound) == 1 and bound[0].way == "value" and bound[0].value is not None:
            return expression(self.source, bound[0].within, bound[0].value)
        if len(bound) > 1:
            bound = self._by_count(bound, len(arguments))
        place = self._parameter_place(bound[0], len(arguments)) if len(bound) == 1 else None
        return expression(self.source, within, arguments[place]) if place is not None else None

    def _by_count(self, bound: list[Binding], count: int) -> list[Binding]:
        """Return what the constructor with so many parameters assigns, if others do the rest."""
        filled = [(one, _constructor_of(one)) for one in bound]
        nodes = {node.id: node for _, node in filled if node is not None}
        if len(nodes) != len(bound):
            return []
        return [one for one, node in filled if node is not None and _count(node) == count]

    def _parameter_place(self, assigned: Binding, count: int) -> int | None:
        """Return which parameter of its constructor a field is filled with."""
        constructor = _constructor_of(assigned)
        if constructor is None or assigned.value is None or assigned.value.type != "identifier":
            return None
        parameters = constructor.child_by_field_name("parameters")
        names = [_name(one) for one in elements(parameters)] if parameters is not None else []
        word = self.source.text(assigned.value)
        filled = self.owned(word, constructor.id)
        others = self._constructors_like(constructor, count)
        if len(names) != count or others != 1 or [one.way for one in filled] != ["parameter"]:
            return None
        return next((at for at, one in enumerate(names) if same(one, filled[0].name)), None)

    def _constructors_like(self, constructor: Node, count: int) -> int:
        """Return how many constructors beside one, and it, have so many parameters."""
        beside = elements(constructor.parent) if constructor.parent is not None else []
        return sum(one.type == _CONSTRUCTOR and _count(one) == count for one in beside)

    def _always_returned(self, binding: Binding, function: Node) -> Node | None:
        return _only_return(function) if _is_final(self.source, function, binding) else None

    def _returned_name(self, binding: Binding) -> str | None:
        value = _only_return(binding.value) if binding.value is not None else None
        words = dotted(self.source, value)
        return words[-1] if words and (len(words) == 1 or words[0] == "this") else None


def _constructor_of(assigned: Binding) -> Node | None:
    """Return the constructor that an assignment stands in."""
    around = (one.node for one in assigned.within.enclosing)
    return next((one for one in around if one.type == _CONSTRUCTOR), None)


def _count(constructor: Node) -> int:
    """Return how many arguments a constructor takes; -1 if any number."""
    given = elements(constructor.child_by_field_name("parameters"))
    return -1 if any(one.type == "spread_parameter" for one in given) else len(given)


def _name(parameter: Node) -> Node | None:
    return parameter.child_by_field_name("name")


def _only_return(method: Node) -> Node | None:
    """Return the value of a method without parameters whose body is one ``return``."""
    body, parameters = method.child_by_field_name("body"), method.child_by_field_name("parameters")
    if body is None or parameters is None or elements(parameters):
        return None
    statements = elements(body)
    if len(statements) != 1 or statements[0].type != "return_statement":
        return None
    return next(iter(elements(statements[0])), None)


def _is_final(source: Source, method: Node, binding: Binding) -> bool:
    """Whether no subclass can give the method another body."""
    owner = binding.within.type
    if modifiers_of(source, method) & {"final", "static", "private"} or owner is None:
        return True
    closed = owner.node.type in {"enum_declaration", "record_declaration"}
    return closed or "final" in modifiers_of(source, owner.node)
