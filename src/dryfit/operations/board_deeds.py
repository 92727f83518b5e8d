"""What is told of boards that are tongued into one another when they go to their place (B10)."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from fractions import Fraction

from dryfit.placing.model import Joint, Model, Part
from dryfit.plan.operation import Detail

KIND = "tongue and groove"


def boards_laid(copies: Collection[str], model: Model) -> tuple[Detail, ...]:
    """Return how boards are laid that go to their place after the finish, which tongues have."""
    joints = (each for each in model.joints if each.kind == KIND and each.guest in copies)
    return tuple(_apart(part, gap) for part, gap in _rows(joints, model))


def boards_glued_in(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    """Return how boards are laid in a glue-up, and that their tongues are coloured before."""
    found: list[Detail] = []
    for part, gap in _rows((each for each in joints if each.kind == KIND), model):
        found.append(
            (
                (
                    f"Before the {part.written} go together, colour their tongues: when the "
                    "boards shrink, bare wood would show in the gaps"
                ),
            )
        )
        found.append(_apart(part, gap))
    return tuple(found)


def _apart(part: Part, gap: Fraction) -> Detail:
    if not gap:
        return (f"No glue between the {part.written}: each slides on the tongue of the next",)
    return (
        f"No glue between the {part.written}: leave ",
        gap,
        (
            " between their faces, by strips of that thickness, so that each can swell; hold each "
            "by its middle or along one edge, never so that two are held as one"
        ),
    )


def _rows(joints: Iterable[Joint], model: Model) -> Iterator[tuple[Part, Fraction]]:
    """Yield each part whose copies are tongued together, with the gap between their shoulders."""
    told: set[str] = set()
    for joint in joints:
        part = model.part_of(joint.guest)
        if part.name not in told:
            told.add(part.name)
            yield part, _gap(joint, part, model)


def _gap(joint: Joint, part: Part, model: Model) -> Fraction:
    """Return how far the shoulder beside a tongue stands from the next board."""
    shoulder = next(each for each in part.features if each.role == "tongue")
    guest, host = model.copy(joint.guest), model.copy(joint.host)
    common = guest.box.overlap(host.box)
    wide = guest.frame.axes[1][0]
    engaged = common.extent(wide) if common is not None else Fraction(0)
    return shoulder.across[1] - shoulder.across[0] - engaged
