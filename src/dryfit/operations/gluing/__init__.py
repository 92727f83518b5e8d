"""What a glue-up takes, and the order it goes together in."""
