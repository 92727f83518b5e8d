"""Which blank comes out of which board: ways tried, layouts, verdicts, what to buy."""
