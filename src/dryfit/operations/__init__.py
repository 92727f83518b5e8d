"""Operations: Model and shop to all work, with alternatives and precedence that says its reason."""

from dryfit.operations.cutting import GROUPS
from dryfit.operations.visits import visit_words
from dryfit.operations.work_list import work_list

__all__ = ["GROUPS", "visit_words", "work_list"]
