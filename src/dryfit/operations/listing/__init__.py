"""All operations of a piece as one list with its rules."""
