"""dryfit: from the notes on a piece of furniture to a build booklet for the bench."""

__version__ = "0.1.0"
