"""The printed booklet: one HTML file, and the same as a PDF."""

from dryfit.booklet.html import Paper, render

__all__ = ["Paper", "render"]
