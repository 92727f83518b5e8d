"""The command that serves an editor."""

from __future__ import annotations

import argparse
from importlib.util import find_spec

from dryfit.cli.status import DONE, StoppedError


def serve_editor(options: argparse.Namespace) -> int:
    """Answer one editor over standard input and output until it says goodbye."""
    if find_spec("pygls") is None:
        raise StoppedError("this needs the editor extra: pip install 'dryfit[editor]'")
    from dryfit.editor.server import serve

    serve(options.shop)
    return DONE
