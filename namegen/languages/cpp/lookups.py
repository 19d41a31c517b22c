"""Look-ups in a C++ file: which nodes match a rule, and which names they ask for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from tree_sitter import Node

from namegen.languages.cpp.constructions import constructions, out_of_class
from namegen.languages.cpp.declarators import arguments_as_parameters
from namegen.languages.cpp.definitions import Definitions
from namegen.languages.cpp.expressions import expression
from namegen.languages.cpp.holders import declared_type, holder
from namegen.languages.cpp.includes import Includes
from namegen.languages.cpp.macros import Macro, macros_with
from namegen.languages.cpp.names import dotted, last_words, type_arguments
from namegen.languages.cpp.openings import every_opening, tries
from namegen.languages.cpp.parameters import parameter
from namegen.languages.cpp.scopes import Scope, scope_of
from namegen.languages.parameters import Parameter
from namegen.languages.sources import Source, Stack, elements, field_of, is_field, same, span_of
from namegen.languages.uses import LookupFinder, Use, kind_asked, placed
from namegen.model.facts import Expression, Ref, Unknown
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

_WHOLE_NAME = frozenset(
    {"dependent_name", "field_expression", "qualified_identifier", "template_function"}
    | {"template_method", "template_type"}
)
_LAST = ("name", "field")
_GIVEN = frozenset({"argument_list", "parameter_list"})
_STEPS = {
    "call_expression": "function",
    "cast_expression": "value",
    "compound_literal_expression": "type",
    "parameter_declaration": "type",
    "pointer_expression": "argument",
    "subscript_expression": "argument",
    "type_descriptor": "type",
}


class Finder(LookupFinder[Definitions, Includes, Scope]):
    """Finds the look-ups of one file."""

    def __init__(
        self,
        source: Source,
        definitions: Definitions,
        imports: Includes,
        rules: Sequence[LookupRule],
    ) -> None:
        super().__init__(source, definitions, imports, rules)
        self._macros: list[Macro] = []

    def _uses(
        self, rules: Mapping[str, Sequence[LookupRule]], places: Sequence[Span]
    ) -> Iterator[Use]:
        for stack in self.source.above(places):
            for rule in rules[self.source.text(stack[-1])]:
                yield from self._use(rule, stack)
        created = [rule for some in rules.values() for rule in some if rule.shape == "new"]
        yield from self._members(created) if created else ()
        for macro in macros_with(self.source, rules):
            self._macros.append(macro)
            for stack in macro.body.stacks(tuple(rules)):
                for rule in rules[self.source.text(stack[-1])]:
                    yield from self._use(rule, macro.block(stack))

    def _members(self, rules: Sequence[LookupRule]) -> Iterator[Use]:
        """Yield what members that another file declares are given, for each rule that may fit."""
        for stack, given in out_of_class(self.source):
            words = ("this", self.source.text(stack[-1].named_children[0]))
            scope = scope_of(self.source, [*stack, given])
            own = tries(self.source, scope, words)
            if not any(self.definitions.bound_at(path) for path in own):
                member = Ref(own, span_of(stack[-1]))
                yield from (Use(rule, stack, given, None, member) for rule in rules)

    def _use(self, rule: LookupRule, stack: Stack) -> Iterator[Use]:
        """Yield the look-ups whose called name is the last node of the stack."""
        if len(stack) < 3:
            return
        match rule.shape:
            case "call":
                yield from self._call(rule, stack)
            case "new":
                if self._is_on(rule, stack):
                    for stack_of, given in constructions(self.source, stack):
                        yield Use(rule, stack_of, given)
            case "subscript":
                yield from self._subscript(rule, stack)
            case "annotation":
                return  # an attribute of C++ gives nothing to a program

    def _call(self, rule: LookupRule, stack: Stack) -> Iterator[Use]:
        place = _called(stack)
        call = stack[place - 1]
        arguments = call.child_by_field_name("arguments")
        function = call.child_by_field_name("function")
        if call.type == "call_expression" and same(function, stack[place]) and arguments:
            if self._is_on(rule, stack):
                yield Use(rule, tuple(stack[:place]), arguments, type_arguments(function))
        elif stack[place].type in {"type_identifier", "qualified_identifier"}:
            yield from self._call_as_parameter(rule, stack, place)
        elif stack[-1].type == "identifier" and rule.on is None:
            yield from self._call_behind_macro(rule, stack)

    def _call_as_parameter(self, rule: LookupRule, stack: Stack, place: int) -> Iterator[Use]:
        """Yield the call in ``Motor bow(motor(kBow))``, which reads like a parameter."""
        one, listed = stack[place - 1], stack[place - 2]
        if one.type != "parameter_declaration" or not is_field(one, "type", stack[place]):
            return
        inner = one.child_by_field_name("declarator")
        given = field_of(inner, "parameters")
        whole = stack[place - 3] if listed.type == "parameter_list" and place > 2 else None
        bare = arguments_as_parameters(whole) and arguments_as_parameters(inner)
        if given is not None and bare and self._is_on(rule, stack):
            yield Use(rule, tuple(stack[:place]), given)

    def _call_behind_macro(self, rule: LookupRule, stack: Stack) -> Iterator[Use]:
        """Yield the call below a macro without a semicolon, ``DONE``, which reads like a type."""
        above, statement = stack[-2], stack[-3]
        given, kind = above.child_by_field_name("value"), statement.child_by_field_name("type")
        if arguments_as_parameters(above):
            given = above.child_by_field_name("parameters")
        if statement.type != "declaration" or given is None or given.type not in _GIVEN:
            return
        if kind is None:
            return
        between = self.source.data[kind.end_byte : stack[-1].start_byte]
        if kind.type == "type_identifier" and self.source.text(kind).isupper() and b"\n" in between:
            yield Use(rule, tuple(stack[:-1]), given)

    def _subscript(self, rule: LookupRule, stack: Stack) -> Iterator[Use]:
        place = _called(stack)
        above = stack[place - 1]
        given = above.child_by_field_name("indices")
        whole = is_field(above, "argument", stack[place])
        fits = above.type == "subscript_expression" and whole and self._is_on(rule, stack)
        if fits and given is not None:
            yield Use(rule, tuple(stack[:place]), given)

    def _is_on(self, rule: LookupRule, stack: Stack) -> bool:
        """Whether what is called has the receiver that the rule asks for."""
        if rule.on is None:
            return True
        for node in reversed(stack[:-1]):
            if node.type == "field_expression":
                return last_word(self.source, node.child_by_field_name("argument")) == rule.on
            if node.type == "qualified_identifier":
                words = dotted(self.source, node.child_by_field_name("scope"))
                return words is not None and words[-1] == rule.on
            if node.type not in _WHOLE_NAME:
                break
        return any(
            one.target[-1] == rule.on
            if not one.local
            else one.local == rule.called and one.target[-2:-1] == (rule.on,)
            for one in every_opening(self.source)
        )

    def _scope(self, use: Use) -> Scope:
        return scope_of(self.source, [*use.stack, use.given])

    def _holders(self, use: Use, names: int) -> list[str | None]:
        filled = holder(self.source, use.stack) if names == 1 else None
        return [None if filled == use.rule.called else filled] * names  # a base class is none

    def _parameter(self, name: Expression) -> Parameter | None:
        for macro in self._macros:
            define = macro.define
            if isinstance(name, Ref) and define.start_byte <= name.span.start < define.end_byte:
                word = name.tries[-1][-1]
                at = macro.parameters.index(word) if word in macro.parameters else None
                return Parameter(macro.name, macro.name, at) if at is not None else None
        return parameter(self.source, self.definitions, name)

    def _overlooked(self, use: Use) -> dict[str, Node]:
        return {}  # C++ has no keywords

    def _names(self, use: Use, scope: Scope) -> list[Expression]:
        if use.node.has_error and use.stack[0] != self.source.root:
            return [Unknown("a macro puts it together", span_of(use.node))]
        return [expression(self.source, scope, node) for node in self._arguments(use)]

    def _arguments(self, use: Use) -> list[Node]:
        """Return the arguments that are names."""
        rule, given = use.rule, elements(use.given)
        keyed = {
            self.source.text(one.named_children[0]).lstrip("."): one.child_by_field_name("value")
            for one in given
            if one.type == "initializer_pair" and one.named_child_count > 1
        }
        named = keyed.get(rule.name_key or "")
        if named is not None:
            return [named]
        found = placed(given, rule.name_at)
        is_rest = rule.name_at == "rest"
        return [one for one in found if is_rest or one.type != "initializer_pair"]

    def _kind(self, use: Use) -> str | None:
        source, given = self.source, elements(use.given)
        return kind_asked(
            use.rule,
            lambda place: last_word(source, next(iter(placed(given, (place,))), None)),
            lambda: last_words(source, use.types),
            lambda: last_words(source, declared_type(source, self.definitions, use.stack)),
        )


def _called(stack: Stack) -> int:
    """Return where the whole of ``boat.template get<Motor>`` stands, which the last node ends."""
    place = len(stack) - 1
    while place > 1 and stack[place - 1].type in _WHOLE_NAME:
        above = stack[place - 1]
        last = next(filter(None, map(above.child_by_field_name, _LAST)), None)
        if above.type != "dependent_name" and not same(last, stack[place]):
            break
        place -= 1
    return place


def last_word(source: Source, node: Node | None) -> str | None:
    """Return the last word of ``a->b``, ``a.b()``, ``a.b[0]``, ``*b``, ``B{}``: here ``b``."""
    while node is not None:
        words = dotted(source, node)
        if words:
            return words[-1]
        if node.type == "field_expression":
            node = node.child_by_field_name("field")
        elif node.type == "string_literal":
            return source.text(node).strip('"')
        elif node.type == "parenthesized_expression":
            node = next(iter(elements(node)), None)
        else:
            step = _STEPS.get(node.type)
            node = node.child_by_field_name(step) if step else None
    return None
