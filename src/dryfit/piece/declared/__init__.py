"""The declared piece: what the maker wrote, with sums worked out to exact millimetres.

Nothing is placed or derived here.  Directions and places are the words of the notes; every
entry carries the span that it came from.
"""

from dryfit.piece.declared.air import AirWords
from dryfit.piece.declared.amounts import (
    NOTHING_BEHIND,
    PART_DIMENSIONS,
    PIECE_DIMENSIONS,
    PLACE_SIDE,
    RUN_AXIS,
    Amount,
    Behind,
    Lean,
    PlacedAmount,
)
from dryfit.piece.declared.cuts import (
    DeclaredFeature,
    RowOfCuts,
    Stretch,
    SurfaceWords,
)
from dryfit.piece.declared.hosts import Host
from dryfit.piece.declared.joints import (
    Contact,
    Detail,
    GluePatch,
    JointWords,
    Opening,
)
from dryfit.piece.declared.parts import (
    BoughtWords,
    DeclaredPart,
    FlushWith,
    GapAround,
    HeightList,
    LipWords,
    LoadWords,
    OnHost,
    SizeLimit,
    SplayWords,
    SpreadWords,
    Supply,
    WoodWish,
    amounts_of,
)
from dryfit.piece.declared.patterns import INSIDE, Instance, inner_name, own_name, thing_of
from dryfit.piece.declared.progress import (
    Done,
    Measured,
    Spoiled,
)
from dryfit.piece.declared.whole import (
    Avoid,
    Declared,
    Have,
    PieceLimit,
    Price,
    SumRead,
)
from dryfit.piece.declared.work import (
    BareWords,
    Coats,
    FinishWords,
    Stage,
    StageItem,
    WishAct,
    WishWords,
)

__all__ = [
    "INSIDE",
    "NOTHING_BEHIND",
    "PART_DIMENSIONS",
    "PIECE_DIMENSIONS",
    "PLACE_SIDE",
    "RUN_AXIS",
    "AirWords",
    "Amount",
    "Avoid",
    "BareWords",
    "Behind",
    "BoughtWords",
    "Coats",
    "Contact",
    "Declared",
    "DeclaredFeature",
    "DeclaredPart",
    "Detail",
    "Done",
    "FinishWords",
    "FlushWith",
    "GapAround",
    "GluePatch",
    "Have",
    "HeightList",
    "Host",
    "Instance",
    "JointWords",
    "Lean",
    "LipWords",
    "LoadWords",
    "Measured",
    "OnHost",
    "Opening",
    "PieceLimit",
    "PlacedAmount",
    "Price",
    "RowOfCuts",
    "SizeLimit",
    "SplayWords",
    "Spoiled",
    "SpreadWords",
    "Stage",
    "StageItem",
    "Stretch",
    "SumRead",
    "Supply",
    "SurfaceWords",
    "WishAct",
    "WishWords",
    "WoodWish",
    "amounts_of",
    "inner_name",
    "own_name",
    "thing_of",
]
