"""What a binding of a C++ name gives to it."""

from __future__ import annotations

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.bindings import FILLED
from namegen.languages.cpp.expressions import expression
from namegen.languages.cpp.functions import returned
from namegen.languages.cpp.lists import GIVEN
from namegen.languages.cpp.types import kept
from namegen.languages.definitions import CHANGED, reason
from namegen.languages.sources import Source, span_of
from namegen.model.facts import Each, Expression, Unknown

_NO_TEXT = {"class": "it is a type, not text", "namespace": "it is a namespace, not text"}


def typed_value(source: Source, one: Binding, typed: Binding | None) -> Expression:
    """Return what a binding gives to a variable of the type that it is declared with."""
    value = _value(source, one)
    if one.way == "each":
        return kept(source, one.within, one.declared, value, brackets=True)
    if typed is None or one.way not in {"assigned", "value"}:
        return value
    points = typed.points or typed.array
    return kept(source, typed.within, typed.declared, value, brackets=points)


def _value(source: Source, binding: Binding) -> Expression:
    span = span_of(binding.name)
    if binding.way == "each" and binding.value is not None:
        return Each(expression(source, binding.within, binding.value), span)
    if binding.way in _NO_TEXT:
        return Unknown(_NO_TEXT[binding.way], span)
    if binding.way == "function" and binding.value is not None:
        return returned(source, binding, binding.value)
    if binding.value is None or binding.way == "enumerator":
        return _reason(source, binding)
    value = binding.value
    if value.type in GIVEN and not binding.many:
        return Unknown("it is put together from several values", span)
    return expression(source, binding.within, value)


def _reason(source: Source, binding: Binding) -> Unknown:
    """Return why it is not known what a name stands for; a change of it is told by its line."""
    span = span_of(binding.name)
    if binding.why == CHANGED and binding.way != "elsewhere":
        line = source.data.count(b"\n", 0, span.start) + 1
        name = source.text(binding.name)
        return Unknown(f"`{name}` is changed in line {line}", span, weighs=True)
    return Unknown(FILLED, span, weighs=True) if binding.why == FILLED else reason(binding)
