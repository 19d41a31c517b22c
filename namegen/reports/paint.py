"""Colours of a terminal. They repeat what the words say and never carry meaning alone."""

from __future__ import annotations

from msgspec import Struct

from namegen.model.findings import Severity

_SEVERITY = {Severity.ERROR: "31", Severity.WARNING: "33", Severity.NOTE: "36"}


class Paint(Struct, frozen=True):
    """Puts colour on text, or leaves it as it is when colour is off."""

    on: bool

    def strong(self, text: str) -> str:
        """Return text that stands out."""
        return self._dyed(text, "1")

    def faint(self, text: str) -> str:
        """Return text that stands back."""
        return self._dyed(text, "2")

    def severity(self, text: str, severity: Severity) -> str:
        """Return text in the colour of a severity."""
        return self._dyed(text, f"1;{_SEVERITY[severity]}")

    def _dyed(self, text: str, code: str) -> str:
        return f"\x1b[{code}m{text}\x1b[0m" if self.on and text else text
