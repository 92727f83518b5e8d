"""The blanks that the parts are made from: allowances, gangs, staves, leaves, spares."""
