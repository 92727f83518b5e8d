"""TRADE H79: boards that are free to cup, and get their finish on one face only."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.joinery.screws import BROAD
from dryfit.placing.model import Coating, Model, Part

_FACES = frozenset(
    {"inside", "outside", "inner", "outer", "front", "back", "top", "bottom", "underside"}
)
_NO_FACE = frozenset({"edge", "edges", "end", "ends", "where"})


def check_one_face(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a part, that one broad face of it is finished and the other stays bare.

    What is glued into a case, as its sides are, is held flat.  Findings: finished-on-one-face.
    """
    glued = {name for joint in model.joints if joint.patches for name in (joint.guest, joint.host)}
    for part in model.parts:
        if part.stock != "solid" or part.width <= BROAD:
            continue
        for copy in part.copies:
            coats = [coating for coating in model.coatings if copy.name in coating.copies]
            words = None if copy.name in glued or not coats else _one_face(coats)
            if words is not None:
                yield _told(model, part, words, coats)
                break


def _told(model: Model, part: Part, words: str, coats: list[Coating]) -> Diagnostic:
    return finding(
        "H79",
        "finished-on-one-face",
        Severity.WARNING,
        f"{part.name}: {words}, so that its faces take up moisture unevenly, and a board "
        f"{model.display.shown(part.width)} wide that nothing holds flat cups",
        coats[0].span,
        figures={"width": part.width},
        remedy="give both faces as many coats, or name no surface on the line",
    )


def _one_face(coats: list[Coating]) -> str | None:
    """Return how one face comes to be bare, None where both faces have their finish or neither."""
    if any(not each.surfaces for each in coats):
        spared = [words for each in coats for words in each.spared if _faces(words)]
        return f"{spared[0]} stays bare" if spared and len(coats) == 1 else None
    said = [each.surfaces for each in coats]
    named = {face for words in said for face in _faces(words)}
    if len(named) != 1 or any("faces" in words for words in said):
        return None
    return f"only {' and '.join(dict.fromkeys(said))} gets its finish"


def _faces(words: str) -> frozenset[str]:
    """Return the broad faces that words for surfaces name; edges and ends are none."""
    each = set(words.split())
    return frozenset() if each & _NO_FACE else frozenset(each & _FACES)
