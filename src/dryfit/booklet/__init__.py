"""The printed booklet: one HTML file, the same as a PDF, and its drawings as files."""

from dryfit.booklet.drawing_files import board_files, drawing_files
from dryfit.booklet.html import Paper, page, render
from dryfit.booklet.view import booklet_view

__all__ = ["Paper", "board_files", "booklet_view", "drawing_files", "page", "render"]
