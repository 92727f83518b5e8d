"""The command that puts the blanks of the notes in order."""

from __future__ import annotations

import argparse
import os
import sys
from pathlib import Path

from dryfit.cli.reading import STANDARD_INPUT, notes_of, read_bytes
from dryfit.cli.status import DONE, IN_THE_NOTES
from dryfit.notes import encoded_like, tidied
from dryfit.outputs import write_whole
from dryfit.patterns import library, may_use_patterns


def tidy(options: argparse.Namespace) -> int:
    """Tidy the notes where they stand, or standard input to standard output.

    With ``--check`` nothing is written: the status says whether anything would change.
    """
    before = read_bytes(options.notes)
    source = notes_of(options.notes, before)
    patterns = library(os.environ)[0] if may_use_patterns(source) else ()
    after = encoded_like(tidied(source, patterns), before)
    if options.check:
        return IN_THE_NOTES if after != before else DONE
    if options.notes == STANDARD_INPUT:
        sys.stdout.buffer.write(after)
    elif after != before:
        # The file itself is put in place anew, not the link by which it may be known.
        write_whole([(Path(options.notes).resolve(), after)])
    return DONE
