"""Why a line cannot be read, in the maker's words, and what to write instead."""

from dryfit.notes.mistakes.offer import explained, is_readable, offered

__all__ = ["explained", "is_readable", "offered"]
