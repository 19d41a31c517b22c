"""Lets ``python -m namegen`` run the command."""

from namegen.cli import main

main()
