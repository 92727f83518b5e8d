"""Joint families as pure functions of sizes, cutters and wood."""
