"""Checks: one file per finding kind; each declares its kind and judges.

There is no list of kinds. A package in here (``manifest``, ``code``, ``fleet``)
is a group; a module of a group that has a ``KIND`` is a finding kind and bears
its name (``port-taken`` is ``port_taken.py``). What else the module has says
what it judges:

=====================================================  ======================
``check(view: RobotView) -> Iterator[Finding]``        in ``manifest``
``check_catalogue(catalogue) -> Iterator[Finding]``    in ``manifest``
``judge(question: NameQuestion) -> Finding | None``    in ``code``, by rank
``check(view: CodeView) -> Iterator[Finding]``         in ``code``
``check(view: FleetView) -> Iterator[Finding]``        in ``fleet``
``check(view: ComparisonView) -> Iterator[Finding]``   in ``comparison``
=====================================================  ======================

A module with a ``KIND`` alone describes what loading or another part finds, as those
in ``outputs`` do what a build finds. A
module without one is shared by the kinds beside it.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Iterator, Mapping
from functools import cache
from types import ModuleType
from typing import cast

from namegen.checks.acceptance import accepted
from namegen.model.boards import Catalogue
from namegen.model.findings import Finding, FindingKind
from namegen.model.views import CodeView, ComparisonView, FleetView, NameQuestion, RobotView

__all__ = [
    "accepted",
    "catalogue_checks",
    "code_checks",
    "comparison_checks",
    "fleet_checks",
    "kind",
    "kinds",
    "manifest_checks",
    "naming_judges",
    "where_judged",
]

ManifestCheck = Callable[[RobotView], Iterator[Finding]]
CatalogueCheck = Callable[[Catalogue], Iterator[Finding]]
NamingJudge = Callable[[NameQuestion], Finding | None]
CodeCheck = Callable[[CodeView], Iterator[Finding]]
ComparisonCheck = Callable[[ComparisonView], Iterator[Finding]]
FleetCheck = Callable[[FleetView], Iterator[Finding]]


class _Kinds(Mapping[str, FindingKind]):
    """Every finding kind by its name, in alphabetical order; what is asked for alone is loaded."""

    def __getitem__(self, name: str) -> FindingKind:
        found = kind(name)
        if found is None:
            raise KeyError(name)
        return found

    def __iter__(self) -> Iterator[str]:
        return iter(_names())

    def __len__(self) -> int:
        return len(_names())


@cache
def kinds() -> Mapping[str, FindingKind]:
    """Return every finding kind by its name, in alphabetical order.

    Where two groups have a kind of one name (a spelling that differs in code
    and in a comparison), the first group in the alphabet speaks for both.
    """
    return _Kinds()


@cache
def _names() -> tuple[str, ...]:
    names = {_kind_of(module).name for group in _groups() for module in _modules(group)}
    return tuple(sorted(names))


@cache
def kind(name: str) -> FindingKind | None:
    """Return one finding kind, or None; only its own file is loaded."""
    group, stem = _home(name)
    return cast(FindingKind, _module(group, stem).KIND) if group else None


def where_judged(name: str) -> str | None:
    """Return what a finding of this kind is judged from, or None when there is no such kind.

    That is the group: ``manifest``, ``fleet``, or ``code`` for a robot's code as a whole; and
    ``look-up`` for what is judged line by line in code.
    """
    group, stem = _home(name)
    if group == "code" and not hasattr(_module(group, stem), "check"):
        return "look-up"
    return group


@cache
def manifest_checks() -> tuple[ManifestCheck, ...]:
    """Return what judges one robot's manifest, in the alphabetical order of the kinds."""
    return cast("tuple[ManifestCheck, ...]", _functions("manifest", "check"))


@cache
def catalogue_checks() -> tuple[CatalogueCheck, ...]:
    """Return what judges the catalogue by itself, once per workspace."""
    return cast("tuple[CatalogueCheck, ...]", _functions("manifest", "check_catalogue"))


@cache
def naming_judges() -> tuple[NamingJudge, ...]:
    """Return the judges of one name in code by rank; the first that answers decides."""
    modules = [module for module in _modules("code") if hasattr(module, "judge")]
    modules.sort(key=lambda module: _rank(_kind_of(module)))
    return tuple(cast(NamingJudge, module.judge) for module in modules)


@cache
def code_checks() -> tuple[CodeCheck, ...]:
    """Return what judges all code of a robot, in the alphabetical order of the kinds."""
    return cast("tuple[CodeCheck, ...]", _functions("code", "check"))


@cache
def comparison_checks() -> tuple[ComparisonCheck, ...]:
    """Return what tells two sides apart, in the alphabetical order of the kinds."""
    return cast("tuple[ComparisonCheck, ...]", _functions("comparison", "check"))


@cache
def fleet_checks() -> tuple[FleetCheck, ...]:
    """Return what holds robots against each other, in the alphabetical order of the kinds."""
    return cast("tuple[FleetCheck, ...]", _functions("fleet", "check"))


def _home(name: str) -> tuple[str | None, str]:
    """Return the group and module of a kind; the group is None when there is no such kind."""
    stem = name.replace("-", "_")
    for group in _groups():
        if stem in _stems(group):
            found = getattr(_module(group, stem), "KIND", None)
            if isinstance(found, FindingKind) and found.name == name:
                return group, stem
    return None, stem


def _rank(kind: FindingKind) -> int:
    if kind.rank is None:
        raise TypeError(f"{kind.name} judges names and must declare its rank")
    return kind.rank


def _functions(group: str, name: str) -> tuple[object, ...]:
    return tuple(getattr(module, name) for module in _modules(group) if hasattr(module, name))


def _groups() -> list[str]:
    return sorted(found.name for found in pkgutil.iter_modules(__path__) if found.ispkg)


@cache
def _stems(group: str) -> tuple[str, ...]:
    package = importlib.import_module(f"{__name__}.{group}")
    return tuple(sorted(found.name for found in pkgutil.iter_modules(package.__path__)))


def _module(group: str, stem: str) -> ModuleType:
    return importlib.import_module(f"{__name__}.{group}.{stem}")


def _modules(group: str) -> list[ModuleType]:
    """Return the modules of a group that are a finding kind."""
    found = [_module(group, stem) for stem in _stems(group)]
    return [module for module in found if isinstance(getattr(module, "KIND", None), FindingKind)]


def _kind_of(module: ModuleType) -> FindingKind:
    return cast(FindingKind, module.KIND)
