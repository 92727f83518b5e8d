"""The notes language: a text to a tree of statements, each word with its place.

`parse` reads a text, `source_of` makes a text of a file's bytes, `canonical` says when two names
are the same; `tree` holds the statements.
"""

from dryfit.notes.names import canonical
from dryfit.notes.parse import parse
from dryfit.notes.text import source_of
from dryfit.notes.tree import Notes, Statement

__all__ = ["Notes", "Statement", "canonical", "parse", "source_of"]
