"""Look-ups in a Kotlin file: which nodes match a rule, and which names they ask for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from tree_sitter import Node

from namegen.languages.kotlin.arguments import Arguments, arguments
from namegen.languages.kotlin.constructions import constructed, constructions
from namegen.languages.kotlin.definitions import Definitions
from namegen.languages.kotlin.expressions import expression
from namegen.languages.kotlin.holders import declared_type, holder
from namegen.languages.kotlin.imports import Imports
from namegen.languages.kotlin.parameters import parameter
from namegen.languages.kotlin.receivers import last_word, receiver_around
from namegen.languages.kotlin.references import is_reference, receiver_of
from namegen.languages.kotlin.scopes import scope_of
from namegen.languages.kotlin.trees import arguments_of, called_of, last_name
from namegen.languages.kotlin.types import last_words, words_between
from namegen.languages.parameters import Parameter
from namegen.languages.scopes import Scope
from namegen.languages.sources import Stack, elements, named_child, occurrences, same
from namegen.languages.uses import LookupFinder, Use, kind_asked
from namegen.model.facts import Expression
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

_NO_TEXT = frozenset({"number_literal", "float_literal", "callable_reference", "lambda_literal"})
"""Values that are surely not names."""


class Finder(LookupFinder[Definitions, Imports, Scope]):
    """Finds the look-ups of one file."""

    def _uses(
        self, rules: Mapping[str, Sequence[LookupRule]], places: Sequence[Span]
    ) -> Iterator[Use]:
        meant = {word: list(some) for word, some in rules.items()}
        for word, some in rules.items():
            for alias in self.imports.aliases(word):
                meant.setdefault(alias, []).extend(some)
        aliases = (word for word in meant if word not in rules)
        also = (place for word in aliases for place in occurrences(self.source.data, word))
        for stack in self.source.above(sorted([*places, *also])):
            for rule in meant[self.source.text(stack[-1])]:
                use = self._use(rule, stack)
                if use is not None:
                    yield use
                elif rule.shape in {"call", "new"} and len(stack) > 2:
                    yield from constructions(self.source, rule, stack)

    def _use(self, rule: LookupRule, stack: Stack) -> Use | None:
        """Return the look-up whose called name is the last node of the stack."""
        if stack[-1].type != "identifier":
            return None
        match rule.shape:
            case "call" | "new":  # what constructs is called like any function
                found = self._call(rule, stack) or self._reference(rule, stack)
                return found or (self._infix(rule, stack) if rule.shape == "call" else None)
            case "annotation":
                return self._annotation(rule, stack)
            case "subscript":
                return self._subscript(rule, stack)

    def _call(self, rule: LookupRule, stack: Stack) -> Use | None:
        """Return the call ``a.b.name(...)``."""
        place = _whole_name(stack)
        call = stack[place - 1] if place else None
        if call is None or call.type != "call_expression":
            return None
        given = arguments_of(call)
        if given is None or not same(called_of(call), stack[place]):
            return None
        return Use(rule, tuple(stack[:place]), given) if self._on(rule, stack, place) else None

    def _infix(self, rule: LookupRule, stack: Stack) -> Use | None:
        """Return the call ``boat motor "bow"``."""
        call = stack[-2]
        parts = elements(call) if call.type == "infix_expression" else []
        if len(parts) != 3 or not same(parts[1], stack[-1]):
            return None
        if rule.on is not None and last_word(self.source, parts[0]) != rule.on:
            return None
        return Use(rule, tuple(stack[:-1]), call)

    def _reference(self, rule: LookupRule, stack: Stack) -> Use | None:
        """Return ``boat::motor``, which is called elsewhere."""
        if len(stack) < 3 or not is_reference(self.source, self.definitions, stack):
            return None
        whole = stack[-2]
        if rule.on is not None and not self._is_on(rule.on, stack, receiver_of(whole)):
            return None
        return Use(rule, tuple(stack[:-1]), whole, passed_on=True)

    def _annotation(self, rule: LookupRule, stack: Stack) -> Use | None:
        """Return the annotation ``@Name(...)``.

        Before a statement the grammar may take what is in the brackets for the statement.
        """
        call = constructed(self.source, rule, stack)
        if call is None:
            return None
        if call[-1].type == "annotation" and call[-2].type == "annotated_expression":
            behind = call[-1].next_named_sibling
            apart = behind is None or behind.type != "parenthesized_expression"
            return Use(rule, tuple(call), behind) if behind is not None and not apart else None
        given = arguments_of(call[-1])
        if given is None or call[-2].type not in {"annotation", "file_annotation"}:
            return None
        return Use(rule, tuple(call[:-1]), given)

    def _subscript(self, rule: LookupRule, stack: Stack) -> Use | None:
        place = _whole_name(stack)
        whole = stack[place - 1] if place else None
        if whole is None or whole.type != "index_expression":
            return None
        if not same(named_child(whole, 0), stack[place]) or not self._on(rule, stack, place):
            return None
        return Use(rule, tuple(stack[:place]), whole)

    def _on(self, rule: LookupRule, stack: Stack, place: int) -> bool:
        """Whether the name, whole at this place of the stack, is called on what a rule says."""
        receiver = named_child(stack[place], 0) if place < len(stack) - 1 else None
        return rule.on is None or self._is_on(rule.on, stack, receiver)

    def _is_on(self, wanted: str, stack: Stack, receiver: Node | None) -> bool:
        """Whether the last of the stack is a member of what is called so, by what is before it."""
        if receiver is not None:
            word = last_word(self.source, receiver)
            if word in {"it", "this"}:
                word = receiver_around(self.source, stack, word)
            return word == wanted
        owners = self.imports.owners_of(self.source.text(stack[-1]))
        return wanted in owners or receiver_around(self.source, stack, None) == wanted

    def _scope(self, use: Use) -> Scope:
        return scope_of(self.source, [*use.stack, use.given])

    def _holders(self, use: Use, names: int) -> list[str | None]:
        return [holder(self.source, use.stack)] if names == 1 else [None] * names

    def _parameter(self, name: Expression) -> Parameter | None:
        return parameter(self.source, self.definitions, name)

    def _given(self, use: Use) -> Arguments:
        return arguments(self.source, use.given)

    def _overlooked(self, use: Use) -> dict[str, Node]:
        """Return the named arguments that may give the name that a row overlooks."""
        if use.rule.name_key is not None:
            return {}
        keyed = self._given(use).keyed
        return {key: value for key, value in keyed.items() if value.type not in _NO_TEXT}

    def _names(self, use: Use, scope: Scope) -> list[Expression]:
        return [expression(self.source, scope, node) for node in self._asked(use)]

    def _asked(self, use: Use) -> list[Node]:
        """Return the arguments that are names."""
        rule, given = use.rule, self._given(use)
        named = given.keyed.get(rule.name_key or "")
        if rule.shape == "annotation" and named is None:
            named = given.keyed.get("value")
        if named is not None and (rule.name_at == "rest" or len(rule.name_at) > 1):
            return [*given.placed(rule.name_at), named]
        return [named] if named is not None else given.placed(rule.name_at)

    def _kind(self, use: Use) -> str | None:
        given = self._given(use)
        return kind_asked(
            use.rule,
            lambda place: last_word(self.source, next(iter(given.placed((place,))), None)),
            lambda: self._type_arguments(use),
            lambda: last_words(self.source, declared_type(self.definitions, use.stack)),
        )

    def _type_arguments(self, use: Use) -> set[str]:
        """Return the words of ``<...>``, which stand between what is called and its brackets."""
        called = last_name(called_of(use.node))
        if called is None or use.node.type != "call_expression":
            return set()
        return words_between(self.source, Span(called.end_byte, use.given.start_byte))


def _whole_name(stack: Stack) -> int:
    """Return where in the stack the name ends with its receiver: ``a.b`` of ``a.b(1)``."""
    above = stack[-2] if len(stack) > 1 else None
    if above is not None and above.type == "navigation_expression":
        return len(stack) - (2 if same(above.named_children[-1], stack[-1]) else 1)
    return len(stack) - 1
