"""The plan as plain data: operations, settings, steps, totals, and their JSON."""
