"""Reading a few files in memory and following their look-ups, for the tests' tables."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from textwrap import dedent

from namegen import languages
from namegen.model.facts import LookupSite, Reading
from namegen.model.workspaces import LookupRule
from namegen.resolving.modules import ModuleFinder
from namegen.resolving.resolver import Resolved, Resolver

MOTOR = LookupRule("call", "motor")
ON_BOAT = LookupRule("call", "motor", on="boat")
ALL = LookupRule("call", "group", name_at="rest")

KINDS = {"Motor": "motor", "Servo": "servo"}
BY_ARGUMENT = LookupRule("call", "get", kind_at=0, name_at=(1,), kinds=KINDS)
BY_TYPE = LookupRule("call", "get", kind_by="type-argument", kinds=KINDS)
BY_DECLARATION = LookupRule("call", "get", kind_by="declared-type", kinds=KINDS)


class Code:
    """Some files of code with the look-up rules that hold for them."""

    def __init__(self, files: Mapping[str, str], rules: Sequence[LookupRule] = (MOTOR,)) -> None:
        self.files = {path: dedent(text).encode() for path, text in files.items()}
        self.rules = rules
        self.readings: dict[str, Reading] = {}
        roots = sorted({path.split("/")[0] for path in files if "/" in path} | {""})
        find = ModuleFinder(self.files.__contains__, roots, self.holding)
        self.resolver = Resolver(self.reading, find)

    def reading(self, path: str) -> Reading | None:
        if path not in self.files:
            return None
        if path not in self.readings:
            language = languages.for_path(path)
            assert language is not None
            self.readings[path] = language.read(self.files[path], self.rules)
        return self.readings[path]

    def holding(self, folder: str, ending: str, word: str) -> list[str]:
        return [
            path
            for path, data in self.files.items()
            if path.rpartition("/")[0] == folder and path.endswith(ending) and word.encode() in data
        ]

    def sites(self, path: str) -> Sequence[LookupSite]:
        reading, language = self.reading(path), languages.for_path(path)
        assert reading is not None and language is not None
        found = [site for site in reading.lookups if self.resolver.holds(site, path)]
        # What an audit rules out by a glance at the bytes, it never reads.
        assert not found or language.prefilter(self.rules)(self.files[path])
        return found

    def resolved(self, path: str) -> list[Resolved]:
        return [one for site in self.sites(path) for one in self.resolver.resolve(site, path)]

    def answers(self, path: str) -> list[str]:
        """Return each text that is looked up, or the reason in brackets."""
        return [f"[{one.why}]" if one.text is None else one.text for one in self.resolved(path)]


def python(text: str, *rules: LookupRule) -> list[str]:
    """Return what the look-ups of one Python file ask for."""
    return Code({"main.py": text}, rules or (MOTOR,)).answers("main.py")


def java(text: str, *rules: LookupRule) -> list[str]:
    """Return what the look-ups of one Java file ask for."""
    return Code({"Main.java": text}, rules or (MOTOR,)).answers("Main.java")


def kotlin(text: str, *rules: LookupRule) -> list[str]:
    """Return what the look-ups of one Kotlin file ask for."""
    return Code({"Main.kt": text}, rules or (MOTOR,)).answers("Main.kt")


def cpp(text: str, *rules: LookupRule) -> list[str]:
    """Return what the look-ups of one C++ file ask for."""
    return Code({"main.cpp": text}, rules or (MOTOR,)).answers("main.cpp")
