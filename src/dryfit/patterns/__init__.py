"""Patterns: parts of a piece written once, in the notes language, with parameters.

The shipped ones stand in ``shipped/``, one a file.  The maker's own, in the folder
``dryfit/patterns`` of the configuration, go before a shipped one of the same name.
"""

from dryfit.patterns.library import library, may_use_patterns, shipped
from dryfit.patterns.start import line_of, start_of
from dryfit.patterns.told import settings_of, sketch_of

__all__ = [
    "library",
    "line_of",
    "may_use_patterns",
    "settings_of",
    "shipped",
    "sketch_of",
    "start_of",
]
