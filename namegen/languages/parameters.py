"""How calls give a name: by place or by keyword, to a look-up or to a function around it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar

from msgspec import Struct

from namegen.languages.definitions import Binding
from namegen.model.facts import Expression, LookupSite, Path, Ref
from namegen.model.workspaces import LookupRule

BindingT = TypeVar("BindingT", bound=Binding)


class Parameter(Struct, frozen=True):
    """A parameter of a named function.

    ``called`` is what a call of the function says: the class, for its constructor.
    ``at`` is the place among the arguments of a call, ``key`` the keyword; each
    is None where a call cannot give the parameter so.
    """

    function: str
    called: str
    at: int | None
    key: str | None = None

    def declared(self, rules: Sequence[LookupRule], own: LookupRule) -> bool:
        """Whether a rule makes calls of the function look-ups by this parameter.

        ``own`` is the rule of the look-up itself. Where it asks for a receiver
        it does not count: calls of the function around it have another.
        """
        return any(
            rule.called == self.called and self._filled(rule)
            for rule in rules
            if rule is not own or rule.on is None
        )

    def _filled(self, rule: LookupRule) -> bool:
        by_place = rule.name_at == "rest" or (self.at is not None and self.at in rule.name_at)
        return by_place or (self.key is not None and self.key == rule.name_key)


def bound_as_parameter(
    name: Expression, bound_at: Callable[[Path], Sequence[BindingT]]
) -> BindingT | None:
    """Return the binding of the parameter that a name is, if nothing else is put into it.

    ``bound_at`` gives the bindings of a path in the file.
    """
    for path in name.tries if isinstance(name, Ref) else ():
        bound = bound_at(path)
        if bound:
            return bound[0] if len(bound) == 1 and bound[0].way == "parameter" else None
    return None


def by_keyword(words: Sequence[str]) -> str:
    """Return why a name is not known that keywords give which no rule names."""
    one = "the keyword" if len(words) == 1 else "one of the keywords"
    listed = " or ".join(f"`{word}`" for word in words)
    return f"it is given by {one} {listed}, which the look-up row does not name"


def without_shadowed(sites: Iterable[LookupSite]) -> list[LookupSite]:
    """Return the sites but for those without a name where another rule finds the name."""
    found = list(sites)
    named = {site.span for site in found if not site.keywords}
    return [site for site in found if not (site.keywords and site.span in named)]
