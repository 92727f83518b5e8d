"""From the blank to the squared part; panels from staves."""
