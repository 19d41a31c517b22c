"""What a dotted path of a Kotlin file stands for."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.altering import KotlinAlterations
from namegen.languages.kotlin.bindings import KotlinBindings
from namegen.languages.kotlin.classes import Classes
from namegen.languages.kotlin.constructors import Constructors
from namegen.languages.kotlin.declarations import may_be_overridden, returned
from namegen.languages.kotlin.expressions import dotted, expression, opened
from namegen.languages.kotlin.families import KotlinFamilies
from namegen.languages.kotlin.implicit_receivers import ImplicitReceivers
from namegen.languages.kotlin.instances import Instance, instance_of
from namegen.languages.kotlin.scopes import OF_RECEIVER, REGIONS, scope_of, tries
from namegen.languages.kotlin.trees import body_of, called_of, child_of
from namegen.languages.members import MemberFinder
from namegen.languages.owned_names import Binding
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Definition, Path, Ref, Unknown

_UNTOLD = "it may be a name of what the lambda works on, whose class is not written here"
_NO_TEXTS = {"constant": "an enum entry is not text itself", "alias": "it is a type, not text"}


class Definitions(MemberFinder):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    ANONYMOUS = "object_literal"
    BINDINGS = KotlinBindings
    NO_TEXTS = _NO_TEXTS
    EXPRESSION = expression

    def __init__(self, source: Source) -> None:
        super().__init__(KotlinAlterations(source), KotlinFamilies(source))
        self.constructors = Constructors(source)
        self._classes = Classes(source, self.bindings, self.bound_at)
        self._receivers = ImplicitReceivers(source, self._classes, self.bindings)

    def _sought(self, path: Path) -> list[Definition]:
        if path[0].startswith("@"):
            if path[1:2] in {(OF_RECEIVER,), ("this",)}:
                return self._of_receiver(path)
            return self._valued(self._in_region(path), path[1:], path) or self._of_anonymous(path)
        bound = self.owned(path[0].removesuffix("()"), self.source.root.id)
        return self._valued(bound, path, path)

    def _of_receiver(self, path: Path) -> list[Definition]:
        """Return a member of the object that a lambda or a function is called on."""
        stack = self._region(path, REGIONS)
        words = self._receivers.words(stack) if stack is not None else None
        if stack is None or words is None:
            return []
        span, is_named, rest = span_of(stack[-1]), path[1] == "this", path[2:]
        scope = scope_of(self.source, stack)
        meant = self._classes.members(scope, words, rest) if words else None
        if meant is not None:
            return [Definition(path, Ref(meant, span), span, inherited=not is_named)]
        if len(rest) > 1 and rest[0][:1].isupper():  # a class or an object: no member's name
            return []
        return [Definition(path, Unknown(RUN_TIME if is_named else _UNTOLD, span), span)]

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a word in a function, a block or types: ("@120", "name")."""
        if path[0].startswith("@"):
            return self._in_region(path) if len(path) == 2 else []
        owner = self.source.root.id
        for word in path[:-1]:
            types = [one for one in self.bindings(word) if one.way == "type" and one.owner == owner]
            if len(types) != 1 or types[0].value is None:
                return []
            owner = types[0].value.id
        return self.owned(path[-1].removesuffix("()"), owner)

    def _owners(self, node: Node, words: Path) -> tuple[set[int], Path]:
        companion = child_of(body_of(node), "companion_object")
        if companion is None:
            return {node.id}, words
        called = words[0] == "Companion" and len(words) > 1
        return {node.id, companion.id}, words[1:] if called else words

    def _sort(self, node: Node) -> str:
        return "an object" if node.type == "object_declaration" else "a type"

    def _below(self, binding: Binding, rest: Path, path: Path) -> list[Definition]:
        """Return a member of an enum entry or of an object that is made here or declared."""
        span = span_of(binding.name)
        instance = self._instance(binding)
        if instance is not None:
            return [Definition(path, instance.member(rest), span)]
        words = self._classes.words_of(binding)
        if words is None:
            return [Definition(path, Unknown(RUN_TIME, span), span)]
        return [Definition(path, Ref(tries(binding.within, (*words, *rest)), span), span)]

    def _instance(self, binding: Binding) -> Instance | None:
        """Return the object that a name holds, where its class stands in this file."""
        if binding.way == "constant":
            entry = binding.value
            if entry is None or binding.within.node.type != "class_declaration":
                return None
            return instance_of(self, entry, binding.within.node, binding.within)
        if binding.way != "value" or binding.value is None:
            return None
        value = opened(binding.value)
        words = dotted(self.source, called_of(value)) if value.type == "call_expression" else None
        for attempt in tries(binding.within, words) if words is not None else ():
            bound = self.bound_at(attempt)
            if bound:
                one = bound[0]
                is_class = one.way == "type" and len(bound) == 1
                if not is_class or one.value is None:
                    return None
                return instance_of(self, value, one.value, binding.within)
        return None

    def _always_returned(self, binding: Binding, function: Node) -> Node | None:
        parameters = child_of(function, "function_value_parameters")
        owner = binding.within.outer
        if parameters is not None and elements(parameters):
            return None
        if owner is not None and owner.sort == "type":
            return None if may_be_overridden(self.source, function, owner) else returned(function)
        return returned(function)
