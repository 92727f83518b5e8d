"""From the tree of the notes to the declared piece: every sum worked out, every name resolved."""

from dryfit.piece.declare import declare
from dryfit.piece.declared import Declared

__all__ = ["Declared", "declare"]
