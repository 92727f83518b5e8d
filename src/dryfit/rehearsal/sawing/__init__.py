"""Boards while they are sawn: the piece in hand, what falls, and the blanks that come out of it."""
