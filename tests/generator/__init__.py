"""Random pieces in the language of the notes, and random shops; each follows from a number alone.

`random_notes(seed)` is the whole text of a piece that a maker might want: of real sizes, in mm or
inches, of parts that meet by the joints of the language.  Most can be built, and some break a rule
of the trade on purpose or by chance: those have to be refused with a finding.
"""

from tests.generator.pieces import random_notes
from tests.generator.shops import random_shop

__all__ = ["random_notes", "random_shop"]
