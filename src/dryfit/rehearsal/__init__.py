"""The rehearsal: a finished plan is played on virtual blanks in a virtual shop, and judged.

It sees the plan, the placed boxes and the shop, and nothing of the code that made the plan.  What
it wants in the end is read from the boxes alone: the copies at their places share no volume, every
joint region is filled, nothing else is gone.
"""

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.rehearse import rehearse

__all__ = ["Fault", "Goal", "Reason", "rehearse"]
