"""Cutting stock: which blank comes out of which board, cut by cut.

A library of its own on whole numbers and names; every size is in hundredths of a millimetre.
`lay_out` says whether the boards are enough, and how they are cut: every layout is a tree of cuts
right through the piece in hand, so that it can be sawn. `violations` replays the cuts and checks
a layout without sharing any code with the search.

>>> rail = Part("rail", 80_000, 6_000, 2_500, quantity=4)
>>> board = Board("A", 240_000, 16_000, 2_700)
>>> job = Job((rail,), (board,), Rules(crosscut_kerf=300, rip_kerf=300, end_trim=1_500))
>>> answer = lay_out(job)
>>> answer.verdict
'enough'
>>> [(cut.saw, cut.at) for cut in answer.layouts[0].cuts][:3]
[('crosscut', 1200), ('crosscut', 80000), ('rip', 6000)]
>>> violations(job, answer.layouts)
()
"""

from dryfit.cutting.added import added, hands
from dryfit.cutting.checker import violations
from dryfit.cutting.engine import lay_out
from dryfit.cutting.knapsack import Filled, best_filling
from dryfit.cutting.picking import Picked, Ways, picked
from dryfit.cutting.problem import Area, Board, Job, Malformed, Part, Rule, Rules
from dryfit.cutting.result import Answer, Cut, Layout, Leftover, Missing, Piece, Proof, stage_after

__all__ = [
    "Answer",
    "Area",
    "Board",
    "Cut",
    "Filled",
    "Job",
    "Layout",
    "Leftover",
    "Malformed",
    "Missing",
    "Part",
    "Picked",
    "Piece",
    "Proof",
    "Rule",
    "Rules",
    "Ways",
    "added",
    "best_filling",
    "hands",
    "lay_out",
    "picked",
    "stage_after",
    "violations",
]
