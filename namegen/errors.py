"""The exceptions of namegen: input that cannot be used at all.

Content that is wrong (a taken port, a misspelt name) is a finding, never an
exception. These say that there was nothing to judge.
"""

from __future__ import annotations


class NamegenError(Exception):
    """Input that cannot be used: what is wrong, where, and how to mend it."""

    def __init__(self, what: str, *, where: str = "", remedy: str = "") -> None:
        super().__init__(what)
        self.what = what
        self.where = where
        self.remedy = remedy

    def __str__(self) -> str:
        text = f"{self.where}: {self.what}" if self.where else self.what
        return f"{text}\n  {self.remedy}" if self.remedy else text


class UnusableInput(NamegenError):
    """A file, folder or option of the user's cannot be used."""


class UnusableTarget(NamegenError):
    """A target's ``target.yaml`` or one of its templates cannot be used."""


class RefusedWrite(NamegenError):
    """A write would lose something of the user's, or land outside the workspace."""
