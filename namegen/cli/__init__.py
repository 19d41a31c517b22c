"""The command: click, one file per command."""

from __future__ import annotations


def main() -> None:
    """Run the command."""
