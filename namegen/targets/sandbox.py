"""The sandbox that templates run in. Imports Jinja2, so it is itself imported only to render."""

from __future__ import annotations

from typing import Any

from jinja2.sandbox import ImmutableSandboxedEnvironment

from namegen.targets import template_model

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
