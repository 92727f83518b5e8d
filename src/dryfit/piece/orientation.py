"""How a part lies: the axes of its length, width and thickness, from words or from habit."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.piece.declared import RUN_AXIS

# Habits of the trade by the last word of a name (common practice); a word on the line wins.
_UPRIGHT = frozenset({"leg", "post", "stile", "upright", "side", "divider", "partition", "muntin"})
_FLAT = frozenset({"seat", "top", "shelf", "bottom", "slat", "board", "lid"})
ON_EDGE = frozenset({"rail", "apron", "skirt", "front", "back", "ledger", "cleat", "stretcher"})
_FACING_SIDE = frozenset({"side", "divider", "partition"})


@dataclass(frozen=True, slots=True)
class Orientation:
    """Axes of length, width, thickness, and what was taken for granted: (sentence, words).

    The words, put on the part's line, say what the sentence says.
    """

    run: str
    axes: tuple[int, int, int]
    assumed: tuple[tuple[str, str], ...]


_OTHER_WAY = {
    "flat": "on edge",
    "on edge": "flat",
    "facing front": "facing side",
    "facing side": "facing front",
}
_SPOKEN = {
    "flat": "lies flat",
    "on edge": "stands on edge",
    "facing front": "faces the front",
    "facing side": "faces the side",
}


def orientation(
    name: str, run: str | None, lie: str | None, *, square: bool, wider_than_deep: bool
) -> Orientation:
    """Return how a part lies.

    `run` and `lie` are the words of the line or None; `square` says that width equals thickness,
    so that turning it does not matter; `wider_than_deep` is the shape of the overall size, which
    a flat part without a direction follows.
    """
    last = name.rsplit(" ", 1)[-1]
    assumed: list[tuple[str, str]] = []
    if run is None:
        run = _usual_run(last, lie, wider_than_deep=wider_than_deep)
        assumed.append((f"{name}: its length runs {spoken(run)}", run))
    length = RUN_AXIS[run]
    if lie is None:
        lie = _usual_lie(last, run)
        if not square:
            assumed.append((f"{name}: it {_SPOKEN[lie]}, not {_OTHER_WAY[lie]}", lie))
    return Orientation(run, (length, *_width_and_thickness(length, lie)), tuple(assumed))


def axes_of(run: int, thickness: int) -> tuple[int, int, int]:
    """Return the axes of length, width and thickness, given those of length and thickness."""
    return run, 3 - run - thickness, thickness


def thickness_on(run: int, lie: str) -> int | None:
    """Return the axis of the thickness of a part that runs along an axis, or None.

    ``on edge`` and ``flat`` do not tell which way an upright faces, nor the other way about.
    """
    if (run == 2) != lie.startswith("facing"):
        return None
    return _width_and_thickness(run, lie)[1]


def lie_of(run: int, thickness: int) -> str:
    """Return the words for a part that runs along one axis and is thin along another."""
    if run == 2:
        return "facing front" if thickness == 1 else "facing side"
    return "flat" if thickness == 2 else "on edge"


def spoken(run: str) -> str:
    """Return a direction as the booklet says it: never a bare "across"."""
    return {"across": "side to side", "upright": "upwards"}.get(run, run)


def _usual_run(last: str, lie: str | None, *, wider_than_deep: bool) -> str:
    if lie in {"facing side", "facing front"} or (lie is None and last in _UPRIGHT):
        return "upright"
    return "across" if wider_than_deep else "front to back"


def _usual_lie(last: str, run: str) -> str:
    if run == "upright":
        return "facing side" if last in _FACING_SIDE else "facing front"
    return "flat" if last in _FLAT else "on edge"


def _width_and_thickness(length: int, lie: str) -> tuple[int, int]:
    if length == 2:
        return (1, 0) if lie in {"facing side", "flat"} else (0, 1)
    other = 1 - length
    return (other, 2) if lie == "flat" else (2, other)
