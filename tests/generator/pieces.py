"""A piece: a family, perhaps in inches, perhaps out of doors, with its wood and its finish."""

from collections.abc import Callable

from tests.generator.draw import Draw
from tests.generator.extras import stock
from tests.generator.families import (
    cases,
    cornered,
    fitted,
    frames,
    fronts,
    large,
    lids,
    small,
    stools,
    tables,
    trestles,
)
from tests.generator.finishes import finish
from tests.generator.page import SOLID, Page
from tests.generator.resting import resting

Family = Callable[[Page], None]
FAMILIES: tuple[tuple[Family, int], ...] = (
    (tables.table, 20),
    (tables.pattern_table, 4),
    (frames.flat_frame, 12),
    (frames.standing_frame, 8),
    (frames.duckboard, 4),
    (frames.ladder, 6),
    (frames.pattern_frame, 3),
    (cases.case, 16),
    (cases.pattern_case, 3),
    (small.tray, 7),
    (small.drawer, 5),
    (cornered.cornered, 6),
    (cornered.tailed_drawer, 4),
    (small.board, 4),
    (small.panelled, 8),
    (small.hook_rail, 4),
    (small.screwed, 4),
    (trestles.trestle_bench, 4),
    (trestles.saddle_stand, 4),
    (stools.staked, 4),
    (trestles.lapped_bench, 5),
    (trestles.long_bench, 2),
    (large.cabinet_on_stand, 3),
    (large.pot_stand, 3),
    (large.rack, 3),
    (lids.lid, 4),
    (fitted.low_case, 5),
    (fitted.biscuited, 4),
    (fronts.moulded, 8),
    (fitted.chest, 5),
)
"""Each with its share: small pieces often, large ones now and then."""


def random_notes(seed: int) -> str:
    """Return the text of a piece in the language of the notes; the same for the same seed."""
    draw = Draw(f"piece {seed}")
    page = Page(draw, inches=draw.chance(30))
    page.outdoors = draw.chance(8)
    wood = "larch" if page.outdoors else draw.one_of(SOLID)
    page.header.append(f"{page.either('timber', 'timber', 'wood')} {wood}")
    stock(page, wood)
    if page.outdoors:
        page.header.append("outdoors")
    if draw.chance(8):
        page.header.append("note Plane the show faces last.")
    family(draw)(page)
    if draw.chance(8):
        sill = page.say(page.overall[2] + page.size(5, 30))
        page.header.append(f"{page.either('at most', 'up to')} {sill} high, the window sill")
    finish(page)
    # By a lot of its own, so that the rest of a piece is the same with it and without.
    return resting(page.text(), Draw(f"rests of {seed}"))


def family(draw: Draw) -> Family:
    """Return one of the families, by its share."""
    left = draw.below(sum(share for _, share in FAMILIES))
    for chosen, share in FAMILIES:
        if left < share:
            return chosen
        left -= share
    raise AssertionError(left)
