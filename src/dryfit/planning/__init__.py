"""Planning: operations to an order of steps with settings, times, waits and totals."""

from dryfit.planning.make_plan import make_plan
from dryfit.planning.ways import best_ways, priced

__all__ = ["best_ways", "make_plan", "priced"]
