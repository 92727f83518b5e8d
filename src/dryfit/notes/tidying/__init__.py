"""Notes with their blanks in order: words, numbers, remarks and the order of lines stay."""

from dryfit.notes.tidying.line_by_line import tidied
from dryfit.notes.tidying.line_ends import encoded_like

__all__ = ["encoded_like", "tidied"]
