"""How boards are sawn up into blanks."""
