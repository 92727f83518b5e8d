"""Operations: Model and shop to all work, with alternatives and precedence that says its reason."""

from dryfit.operations.cuts.cutting import GROUPS
from dryfit.operations.listing.visits import visit_words
from dryfit.operations.listing.work_list import work_list

__all__ = ["GROUPS", "visit_words", "work_list"]
