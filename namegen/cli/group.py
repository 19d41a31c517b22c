"""Finds the commands: every file in ``namegen/cli/commands`` is one."""

from __future__ import annotations

import importlib
import pkgutil

import click

from namegen.cli import commands


class CommandFolder(click.Group):
    """A group whose commands are the modules of one folder, loaded when needed."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Return the commands' names, in the order of the work: first steps first."""
        names = [module.name for module in pkgutil.iter_modules(commands.__path__)]
        return sorted(names, key=lambda name: (self._module_order(name), name))

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Return one command, loading its file only."""
        if cmd_name not in {module.name for module in pkgutil.iter_modules(commands.__path__)}:
            return None
        module = importlib.import_module(f"{commands.__name__}.{cmd_name}")
        command = module.command
        assert isinstance(command, click.Command)
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Find the command, naming the nearest when there is none."""
        name = args[0] if args else ""
        if name and not name.startswith("-") and self.get_command(ctx, name) is None:
            from namegen.text.likeness import nearest

            names = self.list_commands(ctx)
            best = nearest(name, names)
            meant = f'Did you mean "{best}"? ' if best else ""
            ctx.fail(f'there is no command "{name}". {meant}The commands are: {", ".join(names)}.')
        return super().resolve_command(ctx, args)

    @staticmethod
    def _module_order(name: str) -> int:
        module = importlib.import_module(f"{commands.__name__}.{name}")
        return int(getattr(module, "ORDER", 50))
