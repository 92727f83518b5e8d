"""The command line: arguments, exit codes, and nothing that a room could know."""

from dryfit.cli.run import main

__all__ = ["main"]
