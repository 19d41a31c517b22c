"""Look-ups in a Java file: which nodes match a rule, and which names they ask for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from tree_sitter import Node

from namegen.languages.java.constructions import constructions
from namegen.languages.java.definitions import Definitions
from namegen.languages.java.expressions import expression
from namegen.languages.java.holders import declared_type, holder
from namegen.languages.java.imports import Imports
from namegen.languages.java.parameters import parameter
from namegen.languages.java.scopes import scope_of
from namegen.languages.java.types import last_words, type_arguments, type_words
from namegen.languages.parameters import Parameter
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack, elements, is_field, named_child, same
from namegen.languages.uses import LookupFinder, Use, kind_asked, placed
from namegen.model.facts import Expression
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

_NO_TEXT = frozenset(
    {"decimal_integer_literal", "decimal_floating_point_literal", "true", "false", "class_literal"}
)
"""Values that are surely not names."""


class Finder(LookupFinder[Definitions, Imports, Scope]):
    """Finds the look-ups of one file."""

    def _uses(
        self, rules: Mapping[str, Sequence[LookupRule]], places: Sequence[Span]
    ) -> Iterator[Use]:
        for stack in self.source.above(places):
            for rule in rules[self.source.text(stack[-1])]:
                if rule.shape == "new":
                    yield from constructions(self.source, rule, stack)
                    continue
                use = self._use(rule, stack)
                if use is not None:
                    yield use

    def _use(self, rule: LookupRule, stack: Stack) -> Use | None:
        """Return the look-up whose called name is the last node of the stack."""
        match rule.shape:
            case "call":
                return self._call(rule, stack) or self._reference(rule, stack)
            case "annotation":
                return self._annotation(rule, stack)
        return None  # Java subscripts arrays by number alone

    def _call(self, rule: LookupRule, stack: Stack) -> Use | None:
        parent = stack[-2]
        if parent.type != "method_invocation" or not is_field(parent, "name", stack[-1]):
            return None
        receiver = parent.child_by_field_name("object")
        if rule.on is not None:
            if receiver is None and rule.on not in self.imports.types_of(rule.called):
                return None
            if receiver is not None and last_word(self.source, receiver) != rule.on:
                return None
        arguments = parent.child_by_field_name("arguments")
        if arguments is None:
            return None
        return Use(rule, tuple(stack[:-1]), arguments, type_arguments(parent))

    def _reference(self, rule: LookupRule, stack: Stack) -> Use | None:
        """Return ``boat::motor``, which is called elsewhere."""
        reference = stack[-2]
        if reference.type != "method_reference" or not same(reference.children[-1], stack[-1]):
            return None
        if rule.on is not None and last_word(self.source, reference.children[0]) != rule.on:
            return None
        return Use(rule, tuple(stack[:-1]), reference, passed_on=True)

    def _annotation(self, rule: LookupRule, stack: Stack) -> Use | None:
        place = len(stack) - 1
        if stack[place - 1].type == "scoped_identifier":
            place -= 1
            if not is_field(stack[place], "name", stack[-1]):
                return None
            if (
                rule.on is not None
                and last_word(self.source, stack[place].child_by_field_name("scope")) != rule.on
            ):
                return None
        elif rule.on is not None:
            return None
        annotation = stack[place - 1]
        arguments = annotation.child_by_field_name("arguments")
        if annotation.type != "annotation" or arguments is None:
            return None
        if not is_field(annotation, "name", stack[place]):
            return None
        return Use(rule, tuple(stack[:place]), arguments)

    def _scope(self, use: Use) -> Scope:
        return scope_of(self.source, [*use.stack, use.given])

    def _holders(self, use: Use, names: int) -> list[str | None]:
        return [holder(self.source, use.stack)] if names == 1 else [None] * names

    def _parameter(self, name: Expression) -> Parameter | None:
        return parameter(self.source, self.definitions, name)

    def _overlooked(self, use: Use) -> dict[str, Node]:
        """Return the elements of an annotation that may give the name that its row overlooks."""
        if use.rule.shape != "annotation" or use.rule.name_key is not None:
            return {}
        return {
            key: value
            for key, value in self._keyed(elements(use.given)).items()
            if value.type not in _NO_TEXT
        }

    def _names(self, use: Use, scope: Scope) -> list[Expression]:
        return [expression(self.source, scope, node) for node in self._arguments(use)]

    def _arguments(self, use: Use) -> list[Node]:
        """Return the arguments that are names."""
        rule, given = use.rule, elements(use.given)
        if rule.shape == "annotation":
            return self._elements_named(given, rule)
        return placed(given, rule.name_at)

    def _elements_named(self, given: list[Node], rule: LookupRule) -> list[Node]:
        """Return the values of an annotation that are names: of the key, else its one value."""
        keyed = self._keyed(given)
        found = keyed.get(rule.name_key or "value") or keyed.get("value")
        return [found] if found is not None else []

    def _keyed(self, given: list[Node]) -> dict[str, Node]:
        """Return the values of an annotation by their keys."""
        keyed = {}
        for node in given:
            key = node.child_by_field_name("key") if node.type == "element_value_pair" else None
            value = node.child_by_field_name("value") if key is not None else node
            if value is not None:
                keyed[self.source.text(key) if key is not None else "value"] = value
        return keyed

    def _kind(self, use: Use) -> str | None:
        given = elements(use.given) if use.given.type == "argument_list" else []
        return kind_asked(
            use.rule,
            lambda place: last_word(self.source, next(iter(placed(given, (place,))), None)),
            lambda: last_words(self.source, use.types),
            lambda: last_words(self.source, declared_type(self.definitions, use.stack)),
        )


def last_word(source: Source, node: Node | None) -> str | None:
    """Return the last word of ``a.b``, ``a.b()``, ``a.b[0]``, ``b.class``: here ``b``."""
    steps = {
        "field_access": "field",
        "scoped_identifier": "name",
        "method_invocation": "name",
        "array_access": "array",
        "cast_expression": "value",
    }
    while node is not None:
        if node.type in {"identifier", "this", "super"}:
            return source.text(node)
        if node.type in {"type_identifier", "scoped_type_identifier", "generic_type"}:
            words = type_words(source, node)
            return words[-1] if words else None
        if node.type == "string_literal":
            return source.text(node).strip('"')
        if node.type in {"class_literal", "parenthesized_expression"}:
            node = named_child(node, 0)
        else:
            step = steps.get(node.type)
            node = node.child_by_field_name(step) if step else None
    return None
