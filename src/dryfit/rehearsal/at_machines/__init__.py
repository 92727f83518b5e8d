"""What happens at a machine: axes as they stand, a part as it is held, the wood that goes."""
