"""Patterns: parts of a piece written once, in the notes language, with parameters.

The shipped ones stand in ``shipped/``, one a file.  The maker's own, in the folder
``dryfit/patterns`` of the configuration, go before a shipped one of the same name.
"""

from dryfit.patterns.library import library, may_use_patterns, shipped
from dryfit.patterns.start import start_of

__all__ = ["library", "may_use_patterns", "shipped", "start_of"]
