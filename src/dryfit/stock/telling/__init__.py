"""What is told of the wood: in words, as text, as JSON, as `have` lines."""
