"""The command that writes notes to begin with."""

from __future__ import annotations

import argparse
import os
import sys

from dryfit.cli.status import DONE, StoppedError
from dryfit.notes.names import canonical
from dryfit.patterns import library, start_of


def new(options: argparse.Namespace) -> int:
    """Print notes to begin with, those of a pattern where one is named."""
    if not options.pattern:
        sys.stdout.write(start_of(None))
        return DONE
    blocks, _ = library(os.environ)
    wanted = canonical(" ".join(options.pattern))
    found = next((block for block in blocks if block.name == wanted), None)
    if found is None:
        names = ", ".join(dict.fromkeys(block.written for block in blocks))
        raise StoppedError(f"no pattern is called `{wanted}`; there are {names}")
    sys.stdout.write(start_of(found))
    return DONE
