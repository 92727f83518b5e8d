"""One run of the program: the command that the arguments name, and how it ends."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Sequence

from dryfit.cli.arguments import parser
from dryfit.cli.options_near import understood
from dryfit.cli.status import INTERRUPTED, MACHINE, StoppedError
from dryfit.shop import ShopFileError


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    options = understood(parser(), arguments)
    command: Callable[[argparse.Namespace], int] = options.command
    try:
        return command(options)
    except (StoppedError, ShopFileError) as error:
        return _stop(str(error))
    except KeyboardInterrupt:
        return INTERRUPTED
    except BrokenPipeError:
        # The reader of our output went away; nothing is left to say it to.
        sys.stdout = open(os.devnull, "w", encoding="utf-8")  # noqa: PTH123, SIM115
        return MACHINE
    except OSError as error:
        what = f"{error.filename}: " if error.filename else ""
        return _stop(f"{what}{error.strerror or error}")


def _stop(line: str) -> int:
    print(f"dryfit: {line}", file=sys.stderr)
    return MACHINE
