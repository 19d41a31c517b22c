"""Look-ups in a Python file: which nodes match a rule, and which names they ask for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from tree_sitter import Node

from namegen.languages.parameters import Parameter
from namegen.languages.python.callables import argument_of, constructions
from namegen.languages.python.definitions import Definitions
from namegen.languages.python.expressions import expression
from namegen.languages.python.holders import declared_type, holders
from namegen.languages.python.imports import Imports
from namegen.languages.python.parameters import parameter
from namegen.languages.python.scopes import Scope, scope_of
from namegen.languages.sources import Source, Stack, elements, is_field, named_child, same, span_of
from namegen.languages.uses import LookupFinder, Use, kind_among
from namegen.model.facts import PASSED_ON, Each, Expression, Unknown
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

_EACH, _PART = "map", "partial"
"""Functions of Python's library that call the first of their arguments with the others."""
_NO_TEXT = frozenset({"integer", "float", "true", "false", "none", "lambda", "dictionary"})
"""Values that are surely not names."""


class Finder(LookupFinder[Definitions, Imports, Scope]):
    """Finds the look-ups of one file."""

    def _uses(
        self, rules: Mapping[str, Sequence[LookupRule]], places: Sequence[Span]
    ) -> Iterator[Use]:
        aliases: dict[str, list[LookupRule]] = {}
        for stack in self.source.above(places):
            if stack[-1].type != "identifier":
                continue
            for rule in rules[self.source.text(stack[-1])]:
                yield from self._use(rule, stack)
                yield from self._passed_on(rule, stack)
                alias = self._alias(rule, stack)
                if alias is not None:
                    aliases.setdefault(alias, []).append(rule)
        for stack in self.source.stacks(tuple(sorted(aliases))):
            if stack[-1].type == "identifier" and stack[-2].type != "attribute":
                for rule in aliases[self.source.text(stack[-1])]:
                    yield from self._use(rule, stack, trusted=True)
                    yield from self._passed_on(rule, stack, trusted=True)

    def _passed_on(self, rule: LookupRule, stack: Stack, trusted: bool = False) -> Iterator[Use]:
        """Yield where a look-up is passed to be called elsewhere, or called as ``__init__``."""
        place = _callee(stack)
        if rule.shape not in {"call", "new"}:
            return
        if not trusted and not self._receiver_fits(rule, stack[place]):
            return
        yield from constructions(self.source, rule, stack, place)
        passed = argument_of(stack, place)
        if passed is None:
            return
        call, at = passed
        by = self._library_function(call)
        listed = call.child_by_field_name("arguments")
        if at == 0 and by in {_EACH, _PART} and listed is not None:
            whole = tuple(stack[: stack.index(call) + 1])
            yield Use(rule, whole, listed, first=1, mapped=by == _EACH)
        elif self._is_function(rule, stack[place]):
            yield Use(rule, tuple(stack[: place + 1]), stack[place], passed_on=True)

    def _library_function(self, call: Node) -> str:
        """Return which function of Python's library a call is of, if the file has none so named."""
        function = call.child_by_field_name("function")
        if function is not None and function.type == "list_splat":  # `*map(...)` is read so
            function = named_child(function, 0)
        text = self.source.text(function) if function is not None else ""
        word = text.rpartition(".")[2]
        if text not in {_EACH, _PART, f"functools.{_PART}"}:
            return ""
        bound = self.definitions.bindings(word)
        return word if all(one.way == "import" for one in bound) else ""

    def _is_function(self, rule: LookupRule, name: Node) -> bool:
        """Whether a name is that of a function that looks up, not of a variable or a class."""
        whole = name.child_by_field_name("attribute") or name
        word = self.source.text(whole)
        bound = self.definitions.bindings(word)
        if word[:1].isupper():
            return False
        if name.type == "attribute":
            return rule.on is not None and not any(one.attribute for one in bound)
        named = [one for one in bound if not one.attribute]
        return bool(named) and all(one.way in {"import", "function"} for one in named)

    def _use(self, rule: LookupRule, stack: Stack, trusted: bool = False) -> Iterator[Use]:
        """Yield the look-up whose called name is the last node of the stack."""
        callee = _callee(stack)
        if not trusted and not self._receiver_fits(rule, stack[callee]):
            return
        above = stack[callee - 1]
        if rule.shape == "subscript":
            if above.type == "subscript" and same(
                above.child_by_field_name("value"), stack[callee]
            ):
                yield Use(rule, tuple(stack[:callee]), above)
            return
        types = None
        if above.type == "subscript" and is_field(above, "value", stack[callee]):
            types = above
            callee -= 1
            above = stack[callee - 1]
        if above.type != "call" or not is_field(above, "function", stack[callee]):
            return
        if rule.shape == "annotation" and stack[callee - 2].type != "decorator":
            return
        arguments = above.child_by_field_name("arguments")
        if arguments is not None:
            yield Use(rule, tuple(stack[:callee]), arguments, types)

    def _receiver_fits(self, rule: LookupRule, callee: Node) -> bool:
        if rule.on is None:
            return True
        if callee.type == "attribute":
            return last_word(self.source, callee.child_by_field_name("object")) == rule.on
        return rule.on in self.imports.modules_of(rule.called)

    def _alias(self, rule: LookupRule, stack: Stack) -> str | None:
        """Return the other name that the looked-up function gets here, if it does."""
        parent, above = stack[-2], stack[-3] if len(stack) > 2 else stack[0]
        if above.type == "aliased_import" and parent.type == "dotted_name":
            module = last_word_of_import(self.source, stack[-4])
            if rule.on is not None and module != rule.on:
                return None
            alias = above.child_by_field_name("alias")
            return self.source.text(alias) if alias is not None else None
        value, holder = (parent, above) if parent.type == "attribute" else (stack[-1], parent)
        if holder.type != "assignment" or not is_field(holder, "right", value):
            return None
        left = holder.child_by_field_name("left")
        if left is None or left.type != "identifier" or not self._receiver_fits(rule, value):
            return None
        return self.source.text(left)

    def _scope(self, use: Use) -> Scope:
        return scope_of(self.source, list(use.stack))

    def _holders(self, use: Use, names: int) -> list[str | None]:
        return [None] * names if use.mapped else holders(self.source, use.stack, names)

    def _parameter(self, name: Expression) -> Parameter | None:
        return parameter(self.source, self.definitions, name)

    def _overlooked(self, use: Use) -> dict[str, Node]:
        if use.rule.name_key is not None or use.given.type != "argument_list":
            return {}
        return dict(self._keywords(use.given))

    def _keywords(self, given: Node) -> Iterator[tuple[str, Node]]:
        """Yield the keywords, also those of an unpacked table, whose values may be text."""
        for node in elements(given):
            if node.type == "keyword_argument":
                key = node.child_by_field_name("name")
                pairs = [(self.source.text(key) if key is not None else "", node)]
            elif node.type == "dictionary_splat":
                table = next(iter(elements(node)), None)
                rows = elements(table) if table is not None and table.type == "dictionary" else []
                pairs = [
                    (last_word(self.source, row.child_by_field_name("key")) or "", row)
                    for row in rows
                    if row.type == "pair"
                ]
            else:
                continue
            for word, pair in pairs:
                value = pair.child_by_field_name("value")
                if word and value is not None and value.type not in _NO_TEXT:
                    yield word, value

    def _names(self, use: Use, scope: Scope) -> list[Expression]:
        names = [
            expression(self.source, scope, node) if isinstance(node, Node) else node
            for node in self._arguments(use)
        ]
        if use.mapped:
            return [Each(name, name.span) for name in names]
        if use.first and not names:  # what `partial(motor)` gives is called elsewhere
            return [Unknown(PASSED_ON, span_of(use.node))]
        return names

    def _arguments(self, use: Use) -> list[Node | Expression]:
        """Return the arguments that are names."""
        rule, given = use.rule, use.given
        if rule.shape == "subscript":
            return list(given.children_by_field_name("subscript"))
        if given.type != "argument_list":
            return [Unknown("it is made at run time", span_of(given))]
        positional = [node for node in elements(given) if not _by_keyword(node)][use.first :]
        named = self._keyword(given, rule.name_key)
        if rule.name_at == "rest":
            return [*positional, *([named] if named is not None else [])]
        if named is not None and len(rule.name_at) == 1:
            return [named]
        found: list[Node | Expression] = []
        for place in rule.name_at:
            splat = next((n for n in positional[: place + 1] if n.type == "list_splat"), None)
            if splat is not None:
                return [
                    *found,
                    expression(self.source, scope_of(self.source, list(use.stack)), splat),
                ]
            if place < len(positional):
                found.append(positional[place])
        if named is not None:
            found.append(named)
        unpacked = next((n for n in elements(given) if n.type == "dictionary_splat"), None)
        known = rule.name_key is None and any(True for _ in self._keywords(given))
        if not found and unpacked is not None and not known:
            found.append(Unknown("the arguments are unpacked at run time", span_of(unpacked)))
        return found

    def _keyword(self, given: Node, key: str | None) -> Node | None:
        if key is None:
            return None
        for node in given.named_children:
            if node.type == "keyword_argument":
                name = node.child_by_field_name("name")
                if name is not None and self.source.text(name) == key:
                    return node.child_by_field_name("value")
        return None

    def _kind(self, use: Use) -> str | None:
        rule = use.rule
        if rule.kind_at is not None and use.given.type == "argument_list":
            positional = [node for node in elements(use.given) if not _by_keyword(node)]
            positional = positional[use.first :]
            at = positional[rule.kind_at] if rule.kind_at < len(positional) else None
            return rule.kinds.get(last_word(self.source, at) or "", rule.kind)
        if rule.kind_by == "type-argument" and use.types is not None:
            subscripts = use.types.children_by_field_name("subscript")
            return kind_in(self.source, subscripts, rule)
        if rule.kind_by == "declared-type":
            declared = declared_type(self.source, self.definitions, use.stack)
            return kind_in(self.source, [declared] if declared is not None else [], rule)
        return rule.kind


def _callee(stack: Stack) -> int:
    """Return the place of what is called by a name: ``boat.motor``, or the name by itself."""
    is_last = is_field(stack[-2], "attribute", stack[-1])
    return len(stack) - (2 if is_last else 1)


def kind_in(source: Source, types: list[Node], rule: LookupRule) -> str | None:
    """Return the kind that the rule gives to a type; None if it gives none or two."""
    words: set[str] = set()
    pending = list(types)
    while pending:
        node = pending.pop()
        if node.type in {"attribute", "identifier", "string"}:
            words.add(last_word(source, node) or "")
        else:
            pending += node.named_children
    return kind_among(rule, words)


def last_word(source: Source, node: Node | None) -> str | None:
    """Return the last word of ``a.b``, ``a.b()``, ``a.b[0]``: here ``b``."""
    while node is not None:
        if node.type == "identifier":
            return source.text(node)
        if node.type == "string":
            content = named_child(node, 1)
            return source.text(content) if content is not None else None
        step = {"attribute": "attribute", "call": "function", "subscript": "value"}.get(node.type)
        if node.type in {"parenthesized_expression", "await", "type"}:
            node = named_child(node, 0)
        else:
            node = node.child_by_field_name(step) if step else None
    return None


def last_word_of_import(source: Source, statement: Node) -> str | None:
    """Return ``c`` of ``from a.b.c import name``."""
    module = statement.child_by_field_name("module_name")
    return source.text(module).rsplit(".", 1)[-1] if module is not None else None


def _by_keyword(node: Node) -> bool:
    return node.type in {"keyword_argument", "dictionary_splat"}
