"""How the commands of the command line end where they can't go on."""

from difflib import get_close_matches
from typing import Any

import click


class Commands(click.Group):
    """Commands that end with a sentence and exit code 2 when something in Loopleaf itself fails, or when
    there is none of that name.
    """

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except (click.ClickException, click.exceptions.Exit, click.Abort, BrokenPipeError):
            raise
        except Exception as error:  # noqa: BLE001 - whatever it is, a crafter gets a sentence
            click.echo(defect("Loopleaf could not go on", error), err=True)
            ctx.exit(2)

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """An unknown command is refused with the nearest one beside it."""
        if args and self.get_command(ctx, args[0]) is None and not args[0].startswith("-"):
            commands = self.list_commands(ctx)
            near = get_close_matches(args[0], commands, n=1)
            hint = f"Did you mean {near[0]}?" if near else f"There are {', '.join(commands)}."
            ctx.fail(f"There is no command “{args[0]}”. {hint}")
        return super().resolve_command(ctx, args)


def yarn_weight(asked: str) -> int:
    """A yarn weight by its number, or by a name that is only one weight's."""
    from ..trade import weights_named, yarn_weights

    rows = yarn_weights()
    if asked.isdigit() and int(asked) in {row.number for row in rows}:
        return int(asked)
    named = weights_named(asked)
    if len(named) == 1:
        return named[0].number
    those = ", ".join(f"{row.number} ({row.name})" for row in named or rows)
    many = "more than one" if named else "no"
    raise click.BadParameter(f"“{asked}” is {many} yarn weight: write {those}.")


def defect(what: str, error: Exception) -> str:
    """What a crafter reads where Loopleaf itself fails."""
    return (
        f"{what}: {type(error).__name__}: {error}\n"
        "That is a defect of Loopleaf, not of your pattern; please report it with the file."
    )
