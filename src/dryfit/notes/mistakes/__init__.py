"""Why a line cannot be read, in the maker's words, and what to write instead."""

from dryfit.notes.mistakes.unreadable import unreadable

__all__ = ["unreadable"]
