"""Places that match a look-up rule, and the look-ups that they give, in every language."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from tree_sitter import Node

from namegen.languages.parameters import without_shadowed
from namegen.model.facts import Expression, LookupSite, Several
from namegen.model.workspaces import LookupRule


@dataclass(frozen=True, slots=True)
class Use:
    """A place that matches a rule: the whole look-up, what it is given, its type arguments."""

    rule: LookupRule
    stack: tuple[Node, ...]
    """From the root down to the whole look-up."""
    given: Node
    """The argument list, or a subscript itself."""
    types: Node | None = None

    @property
    def node(self) -> Node:
        """The whole look-up."""
        return self.stack[-1]


def in_order(uses: Iterable[Use], sites: Callable[[Use], Iterable[LookupSite]]) -> list[LookupSite]:
    """Return the look-ups of all uses in the order of the file, each place once."""
    found: dict[tuple[int, int, int], LookupSite] = {}
    for use in uses:
        for site in sites(use):
            key = (use.node.start_byte, use.node.end_byte, site.name.span.start)
            found.setdefault(key, site)
    return sorted(without_shadowed(found.values()), key=lambda site: (site.name.span, site.span))


def spread(name: Expression) -> list[Expression]:
    """Return the names in a list or a condition one by one."""
    if not isinstance(name, Several):
        return [name]
    return [inner for option in name.options for inner in spread(option)]
