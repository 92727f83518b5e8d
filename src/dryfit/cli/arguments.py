"""The arguments of every command, and the function that runs it."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import TypeAlias

from dryfit import __version__
from dryfit.cli import on_notes
from dryfit.cli.options_near import Once
from dryfit.plan.favour import WORTH

# argparse has no public name for it, and it takes its parameter in annotations only.
Commands: TypeAlias = "argparse._SubParsersAction[argparse.ArgumentParser]"  # noqa: SLF001
Run = Callable[[argparse.Namespace], int]


def parser() -> argparse.ArgumentParser:
    """Return the parser; what it returns has the function to run as `command`."""
    made = argparse.ArgumentParser(
        prog="dryfit",
        description="Turn notes on a piece of furniture into an ordered build booklet.",
    )
    made.add_argument("--version", action="version", version=f"dryfit {__version__}")
    commands = made.add_subparsers(required=True, metavar="COMMAND")
    _add_those_on_notes(commands)
    tidy = _command(commands, "tidy", _tidy, "put the blanks of the notes in order")
    _add_notes(tidy)
    tidy.add_argument("--check", action="store_true", help="write nothing; status 1 if it would")
    new = _command(commands, "new", _new, "notes to begin with, from a pattern or without one")
    new.add_argument("pattern", metavar="PATTERN", nargs="*", help="such as: apron base")
    serve = _command(commands, "serve-editor", _serve_editor, "findings and more while typing")
    _add_shop(serve)
    _add_those_about_the_program(commands)
    return made


def _add_those_on_notes(commands: Commands) -> None:
    check = _on_notes(commands, "check", on_notes.check, "look for mistakes, list what is assumed")
    parts = _on_notes(commands, "parts", on_notes.parts, "the cut list with every size")
    steps = _on_notes(commands, "steps", on_notes.steps, "the order of work with every setting")
    stock = _on_notes(commands, "stock", _stock, "what comes out of which board, what is missing")
    booklet = _on_notes(commands, "booklet", on_notes.booklet, "the booklet to print: HTML and PDF")
    why = _on_notes(commands, "why", on_notes.why, "where a figure or a step's place comes from")
    why.add_argument(
        "things",
        metavar="THING",
        nargs="*",
        help="a part, a figure, an operation, a blank, a board or the number of a step; without it "
        "every step",
    )
    instead = parts.add_mutually_exclusive_group()
    of_steps = steps.add_mutually_exclusive_group()
    of_steps.add_argument(
        "--move",
        action=Once,
        nargs=3,
        metavar=("STEP", "before", "STEP"),
        help="what it would be to do a step before (or after) another: the plan side by side with "
        "the best that keeps to it, or what forbids it",
    )
    for command in (check, instead, of_steps, stock):
        command.add_argument("--json", action="store_true", help="one JSON document instead")
    instead.add_argument("--csv", action="store_true", help="comma-separated values instead")
    for command in (check, steps, booklet):
        command.add_argument(
            "-v", "--verbose", action="store_true", help="tell how long each stage took"
        )
    check.add_argument("--whole", action="store_true", help="plan and rehearse as well")
    for command in (check, steps, booklet, why):
        command.add_argument(
            "--start",
            metavar="DAY",
            type=_day,
            help="when work begins: a date such as 2026-12-05, or a weekday (default: a Monday)",
        )
    for command in (steps, booklet):
        command.add_argument(
            "--unrehearsed", action="store_true", help="print the plan without playing it first"
        )
    _add_favour(steps, booklet, why)
    _add_what_is_printed(steps, stock, booklet)


def _add_what_is_printed(
    steps: argparse.ArgumentParser,
    stock: argparse.ArgumentParser,
    booklet: argparse.ArgumentParser,
) -> None:
    steps.add_argument(
        "--compare",
        action="store_true",
        help="only what the three orders take, side by side with the work part by part",
    )
    stock.add_argument(
        "--svg", metavar="DIR", help="folder for a drawing of each board, an SVG file"
    )
    booklet.add_argument(
        "-o", "--output", metavar="DIR", default=".", help="folder for the files (default: here)"
    )
    booklet.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="size of the pages (default: a4)"
    )
    booklet.add_argument(
        "--drawings", metavar="DIR", help="folder for all drawings besides, each an SVG file"
    )
    booklet.add_argument("--no-pdf", dest="pdf", action="store_false", help="write the HTML only")


def _add_favour(*commands: argparse.ArgumentParser) -> None:
    for command in commands:
        command.add_argument(
            "--favour",
            choices=tuple(WORTH),
            help=f"how much waiting a minute of set-up is worth: setups {WORTH['setups']} minutes, "
            f"so that settings are changed as seldom as can be; balanced {WORTH['balanced']} (what "
            f"is taken without the word); soonest {WORTH['soonest']}, so that the piece is done "
            "early",
        )


def _add_those_about_the_program(commands: Commands) -> None:
    explain = _command(commands, "explain", _explain, "what a finding means and what to write")
    explain.add_argument(
        "code",
        metavar="CODE",
        nargs="?",
        help="the code in brackets behind the severity; without it all codes",
    )
    help_on = _command(commands, "help", _help_on, "the language, its words, colours for an editor")
    help_on.add_argument("topic", metavar="TOPIC", nargs="?", help="all topics are told without it")


def _day(text: str) -> date | int:
    from dryfit.shop.values import WrongValueError, first_day

    try:
        return first_day(text)
    except WrongValueError as wrong:
        raise argparse.ArgumentTypeError(f"{wrong}; {wrong.hint}") from None


def _stock(options: argparse.Namespace) -> int:
    from dryfit.cli.stock import stock

    return stock(options)


def _explain(options: argparse.Namespace) -> int:
    from dryfit.cli.about import explain

    return explain(options)


def _help_on(options: argparse.Namespace) -> int:
    from dryfit.cli.about import help_on

    return help_on(options)


def _tidy(options: argparse.Namespace) -> int:
    from dryfit.cli.tidying import tidy

    return tidy(options)


def _new(options: argparse.Namespace) -> int:
    from dryfit.cli.starting import new

    return new(options)


def _serve_editor(options: argparse.Namespace) -> int:
    from dryfit.cli.editing import serve_editor

    return serve_editor(options)


def _on_notes(commands: Commands, name: str, run: Run, words: str) -> argparse.ArgumentParser:
    command = _command(commands, name, run, words)
    _add_notes(command)
    _add_shop(command)
    command.add_argument("--strict", action="store_true", help="take warnings for errors")
    return command


def _add_notes(command: argparse.ArgumentParser) -> None:
    command.add_argument("notes", metavar="NOTES", help="the notes, or - for standard input")


def _add_shop(command: argparse.ArgumentParser) -> None:
    command.add_argument("--shop", metavar="FILE", type=Path, help="a shop file of your own")


def _command(commands: Commands, name: str, run: Run, words: str) -> argparse.ArgumentParser:
    command = commands.add_parser(name, help=words, description=words[0].upper() + words[1:] + ".")
    command.set_defaults(command=run)
    return command
