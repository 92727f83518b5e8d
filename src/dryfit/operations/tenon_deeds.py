"""Wedges, pegs and through tenons at the bench: deeds of the dry fit and of the glue-up (B3.6)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH
from dryfit.geometry.lean import UP
from dryfit.joinery.mortise_tenon import TenonSizes
from dryfit.joinery.panel import edge_movement
from dryfit.operations.naming import plural
from dryfit.operations.words import spoken
from dryfit.placing.model import Joint, Model, Part
from dryfit.plan.operation import Detail

Row = tuple[str, str, TenonSizes, int]


def before_the_glue(joints: tuple[Joint, ...], model: Model) -> tuple[Detail, ...]:
    """Return what is done to tenons at the dry fit: kerfs for wedges, mortises widened for them.

    The kerf ends 10 mm before the shoulder, the mortise widens 1:8 (TRADE B3.6, common practice).
    """
    found: list[Detail] = []
    for rail, host, sizes, _ in _rows(joints, model):
        if sizes.rounded:
            found += _of_round_tenons(model.part(rail), host, sizes)
        elif sizes.wedges:
            found.append(
                (
                    f"Saw {spoken(sizes.wedges, 'kerf')} across each tenon of {rail}, to ",
                    max(sizes.length - 10, sizes.length / 2),
                    (
                        f" from its end, and widen the mortise in {host} by 1 in 8 towards the far "
                        "side, so that the wedges spread the tenon"
                    ),
                )
            )
        if sizes.drawn:
            found.append(
                (
                    f"Taper the ends of the pegs for {rail}: the holes in the tenons lie ",
                    sizes.drawn,
                    " nearer to the shoulder, which pulls the joint shut",
                )
            )
    return tuple(found)


def _of_round_tenons(leg: Part, host: str, sizes: TenonSizes) -> Iterator[Detail]:
    """Yield how wedged round tenons are slit, and how legs that lean are tried (B3.6)."""
    beyond = Fraction(0) if leg.sloped is None else leg.sloped.stands_out
    deep = sizes.length if leg.sloped is None else leg.sloped.tenon
    if sizes.wedges:
        yield (
            f"Saw {spoken(sizes.wedges, 'kerf')} down each round tenon of {leg.name}, to ",
            max(deep - 10, deep / 2) + beyond,
            (
                f" from its end, so that the wedge lies across the grain of {host} when the leg "
                "stands right: along it, it splits it"
            ),
        )
    if leg.sloped is not None:
        yield (
            (
                f"Number each {leg.name} and its hole, and mark both where they meet: no other "
                f"place, and no turn of the {leg.name}, has its shoulder shut"
            ),
        )


def with_the_glue(joints: tuple[Joint, ...], model: Model) -> tuple[Detail, ...]:
    """Return what is driven while the glue is wet."""
    found: list[Detail] = []
    for rail, host, sizes, count in _rows(joints, model):
        if sizes.rounded:
            found.append(_driven_home(model.part(rail), host, model))
        if sizes.wedges:
            found.append(
                (
                    (
                        f"Drive {spoken(count * sizes.wedges, 'wedge')} with glue into the tenons "
                        f"of {rail}, evenly and across the grain of {host}, once the joint is shut"
                    ),
                )
            )
        if sizes.pegs:
            pegs = spoken(count * sizes.all_pegs, "peg")
            found.append((f"Drive {pegs} through {host} and the tenons of {rail}",))
        if sizes.floats:
            found.append(
                (
                    f"No glue on the tenons of {rail} in {host}: their shoulders stay ",
                    sizes.floats,
                    (
                        " off, so that the wood can shrink there: a strip so thick stays in the "
                        "gap until the clamps come off"
                    ),
                )
            )
        if sizes.tongue:
            found += _of_board_end(model.part(rail), host, sizes)
    return tuple(found)


def _driven_home(leg: Part, host: str, model: Model) -> Detail:
    if leg.copies[0].frame.axes[LENGTH][0] != UP:
        return (
            (
                f"No clamps: lay one {host} on the bench and drive the {leg.name} home into it "
                "with a mallet on a block, until its shoulder is shut all round; then drive the "
                f"other {host} onto it, on a block as well"
            ),
        )
    along = "" if leg.sloped is None else ", each along its own slope and turned to its mark"
    driven, shut = f"drive each {leg.name} home with a mallet on a block", "its shoulder is"
    if leg.sloped is not None and _in_ladders(leg, model):
        pair = plural(leg.name)
        driven = f"drive each pair of {pair} home with a mallet on a block, by turns"
        along, shut = ", along their slope and each to its mark", "their shoulders are"
    return (f"No clamps: with {host} upside down {driven}{along}, until {shut} shut all round",)


def _in_ladders(leg: Part, model: Model) -> bool:
    """Return whether something that leans with splayed legs is glued between them."""
    names = {copy.name for copy in leg.copies}
    guests = {joint.guest for joint in model.joints if joint.host in names}
    return any(copy.name in guests and copy.lean for part in model.parts for copy in part.copies)


def _of_board_end(plank: Part, host: str, sizes: TenonSizes) -> tuple[Detail, ...]:
    """Return how a plank stays free to move in its board ends, and when both are levelled (G5)."""
    rows: list[Detail] = []
    if any(sizes.plays):
        held = "Glue holds the middle tenon alone, and none goes on the tongue"
        pegs = (
            "; the outer pegs go through slots of the tenons: no glue on them but a dab where they "
            f"leave {host}"
        )
        rows.append((f"{held}{pegs if sizes.pegs else ''}: the {plank.name} has to slide",))
    moves = edge_movement(plank.width, plank.moving) if plank.stock == "solid" else Fraction(0)
    if moves:
        rows.append(
            (
                f"Note the season: between dry and damp months the {plank.name} moves by up to ",
                moves,
                f" at either end of each {host}. Plane both level once, when the glue is hard",
            )
        )
    return tuple(rows)


def stands_out(joint: Joint) -> bool:
    """Return whether something of a joint stands out that is planed level later.

    A tenon right through, the ends of wedges and of pegs; not what the notes want proud, nor wedges
    that are knocked out again.
    """
    sizes = joint.tenon
    if sizes is None or sizes.proud:
        return False
    return sizes.pegs > 0 or (joint.glued and (sizes.through or sizes.wedges > 0))


def made_flush(joints: tuple[Joint, ...], model: Model) -> tuple[Detail, ...]:
    """Return what is planed or sawn off level when the glue is hard."""
    found: list[Detail] = []
    for rail, host, sizes, _ in _rows(tuple(each for each in joints if stands_out(each)), model):
        if sizes.rounded and model.part(rail).sloped is not None:
            found.append(
                (
                    (
                        f"Saw what stands out of the tenons of {rail} off close to {host}, with a "
                        "card under the saw, and plane them level"
                    ),
                )
            )
        elif sizes.through:
            found.append((f"Plane the tenons of {rail} level with {host}, in from its edges",))
        else:
            found.append((f"Saw off what stands out of {host} and pare it level",))
    return tuple(dict.fromkeys(found))


def wedges_driven_dry(joints: tuple[Joint, ...], model: Model) -> tuple[Detail, ...]:
    """Return how wedges hold a tenon that gets no glue, so that they can be knocked out again."""
    return tuple(
        (
            (
                f"Drive {spoken(count * sizes.wedges, 'wedge')} dry into the kerfs of {rail}, "
                f"evenly and across the grain of {host}, until the shoulders are tight"
            ),
        )
        for rail, host, sizes, count in _rows(joints, model)
        if sizes.wedges
    )


def _rows(joints: tuple[Joint, ...], model: Model) -> Iterator[Row]:
    counts: dict[tuple[str, str, TenonSizes], int] = {}
    for joint in joints:
        if joint.tenon is not None:
            key = (model.part_of(joint.guest).name, model.part_of(joint.host).name, joint.tenon)
            counts[key] = counts.get(key, 0) + 1
    return ((*key, count) for key, count in counts.items())
