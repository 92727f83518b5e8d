"""Planning: operations to an order of steps with settings, times, waits and totals."""

from dryfit.planning.make_plan import make_plan

__all__ = ["make_plan"]
