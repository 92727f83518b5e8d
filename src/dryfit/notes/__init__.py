"""The notes language: a text to a tree of statements, each word with its place.

`parse` reads a text, `source_of` makes a text of a file's bytes, `canonical` says when two names
are the same; `tree` holds the statements.  `tidied` puts the blanks of a text in order and
`encoded_like` makes bytes of it again.  `names_of` and `names_by_line` tell which names lines use.
"""

from dryfit.notes.names import canonical
from dryfit.notes.names_in_text import names_by_line, names_of
from dryfit.notes.parse import parse
from dryfit.notes.text import source_of
from dryfit.notes.tidying import encoded_like, tidied
from dryfit.notes.tree import Notes, Statement

__all__ = [
    "Notes",
    "Statement",
    "canonical",
    "encoded_like",
    "names_by_line",
    "names_of",
    "parse",
    "source_of",
    "tidied",
]
