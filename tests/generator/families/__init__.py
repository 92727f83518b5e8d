"""Families of furniture: each module writes pieces of one kind onto a page."""
