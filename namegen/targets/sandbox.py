"""The sandbox that templates run in. Imports Jinja2, so it is itself imported only to render."""

from __future__ import annotations

from typing import Any

from jinja2 import Undefined
from jinja2.sandbox import ImmutableSandboxedEnvironment

from namegen.targets import template_model
from namegen.targets.unescaped import Unescaped, UnescapedText

_FIELDS = {data: template_model.readable(data) for data in template_model.CLASSES}


class Sandbox(ImmutableSandboxedEnvironment):
    """Jinja2's sandbox with a short way to the fields of the template data.

    They are frozen and hold nothing that runs, so they need none of the checks
    that take the sandbox most of its time.
    """

    def getattr(self, obj: Any, attribute: str) -> Any:  # noqa: ANN401 - as Jinja2 has it
        """Return an attribute of an object, or an undefined value where it may not be had."""
        if attribute in _FIELDS.get(type(obj), ()):
            return getattr(obj, attribute)
        return super().getattr(obj, attribute)

    def getitem(self, obj: Any, argument: Any) -> Any:  # noqa: ANN401 - as Jinja2 has it
        """Return an item or field: filters such as ``selectattr`` ask for fields this way."""
        if argument in _FIELDS.get(type(obj), ()):
            return getattr(obj, argument)
        return super().getitem(obj, argument)


def finished(value: object) -> object:
    """Let through what may stand in a file as it is: strings that namegen spelled, and numbers.

    Raises:
        UnescapedText: the value is manifest text that no escape has seen.
        TypeError: the value is another object, or true, false or none.
    """
    if type(value) is str:  # nearly always; asked for every piece of every file
        return value
    if isinstance(value, str | int | float | Undefined) and not isinstance(value, bool):
        return value
    if isinstance(value, Unescaped):
        raise UnescapedText
    raise TypeError(f"{type(value).__name__} has no spelling of its own: say what to put out")
