"""A board cut as its layout says, by nothing but the cuts."""

from fractions import Fraction

from dryfit.stock.laid_out import BoardLayout, Fallen, Placed, Reach


def parts_of(layout: BoardLayout) -> list[Placed | Fallen]:
    return [*layout.placed, *layout.fallen]


def played(layout: BoardLayout) -> list[tuple[Reach, Reach]]:
    """What the cuts leave, played one after the other from the board on."""
    long, wide, _ = layout.board.sizes
    none = Fraction(0)
    hands: dict[tuple[int | None, str], tuple[Reach, Reach]] = {
        (None, ""): ((none, long), (none, wide))
    }
    for cut in layout.cuts:
        along, across = hands.pop((cut.after, cut.side))
        assert (cut.along, cut.across) == (along, across)
        start, end = along if cut.saw == "crosscut" else across
        sides = (start, start + cut.at), (start + cut.at + cut.kerf, end)
        for side, reach in zip(("first", "rest"), sides, strict=True):
            if reach[1] > reach[0]:
                piece = (reach, across) if cut.saw == "crosscut" else (along, reach)
                hands[cut.number, side] = piece
    return list(hands.values())


def kerfs(layout: BoardLayout) -> Fraction:
    """The face that the saw takes."""
    runs = (
        cut.kerf * (run[1] - run[0])
        for cut in layout.cuts
        for run in [cut.across if cut.saw == "crosscut" else cut.along]
    )
    return sum(runs, Fraction(0))


def face(one: Placed | Fallen) -> Fraction:
    return (one.along[1] - one.along[0]) * (one.across[1] - one.across[0])
