"""Planning: operations to an order of steps with settings, times, waits and totals."""

from dryfit.planning.make_plan import WORTH, make_plan

__all__ = ["WORTH", "make_plan"]
