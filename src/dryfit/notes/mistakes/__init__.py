"""Why a line cannot be read, in the maker's words, and what to write instead."""

from dryfit.notes.mistakes.offer import is_readable, offered
from dryfit.notes.mistakes.unreadable import unreadable

__all__ = ["is_readable", "offered", "unreadable"]
