"""Whether Python itself takes a text, without letting a hostile text end the process."""

from __future__ import annotations

import warnings


def compiles(utf8: bytes) -> bool:
    """Whether the running Python compiles a file's text."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            compile(utf8.decode("utf-8"), "<audited>", "exec", dont_inherit=True)
        except (SyntaxError, ValueError, OverflowError, MemoryError, RecursionError):
            return False
    return True
