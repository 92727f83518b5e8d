"""Time and resources of a plan: hours, waits, clamps, dust, sums."""

from dryfit.rehearsal.times.in_time import times

__all__ = ["times"]
