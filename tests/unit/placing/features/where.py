"""The boxes that cuts take from copies, in the piece, for comparison with hand-worked ones."""

from fractions import Fraction

from tests.pieces.reading import checked

from dryfit.diagnostics import Diagnostic
from dryfit.placing.model import Model

Bounds = tuple[tuple[Fraction, Fraction], ...]


def placed(text: str) -> Model:
    """The Model of notes, whatever the checks say of it."""
    model = checked(text).model
    assert model is not None, [finding.message for finding in checked(text).findings]
    return model


def cuts(model: Model, copy_name: str, role: str) -> set[Bounds]:
    """Where cuts of a job lie on a copy: bounds along x, y and z."""
    part, copy = model.part_of(copy_name), model.copy(copy_name)
    boxes = (
        feature.box(copy.box, copy.frame)
        for feature in part.features
        if feature.role == role and copy.hand in feature.hands
    )
    return {tuple(zip(box.low, box.high, strict=True)) for box in boxes}


def bounds(*pairs: tuple[float | str, float | str]) -> Bounds:
    """Bounds along x, y and z, written as whole or decimal millimetres."""
    return tuple((Fraction(str(low)), Fraction(str(high))) for low, high in pairs)


def found(text: str, code: str) -> list[Diagnostic]:
    """The findings of one code."""
    return [finding for finding in checked(text).findings if finding.code == code]
