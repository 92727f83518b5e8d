"""What is missing is little: boards that are too few hold as much as was found that they can.

A search for everything need not hold the most where it does not succeed.  Here all is laid out but
one blank, the smallest that suffices; else as many as there is room for, large ones first.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from dryfit.cutting import Answer, Job, Missing
from dryfit.stock.laying.outcome import Outcome, answered

MOST = 24
"""Of more blanks than these no others are tried (ours)."""


def most_held(outcome: Outcome) -> Outcome:
    """Return the outcome with less missing where that is found; what is proved stays as it is."""
    answers = tuple(
        _fuller(split.job, answer) if answer.missing else answer for split, answer in outcome.pairs
    )
    return replace(outcome, answers=answers)


def _fuller(job: Job, answer: Answer) -> Answer:
    faces = {part.id: part.length * part.width for part in job.parts}
    hopeless = {name for one in answer.proofs if one.bound == "part" for name in one.parts}
    wanted = {part.id: part.quantity for part in job.parts if part.id not in hopeless}
    lost = {one.part: one.copies for one in answer.missing if one.part in wanted}
    least = sum(faces[name] * copies for name, copies in lost.items())
    if not lost or sum(wanted.values()) > MOST:
        return answer
    for name in sorted(wanted, key=lambda name: (faces[name], name)):
        if faces[name] >= least:
            break
        found = _all_of(job, wanted | {name: wanted[name] - 1})
        if found is not None:
            return _instead(job, answer, found)
    held = dict.fromkeys(wanted, 0)
    best: Answer | None = None
    for name in sorted(wanted, key=lambda name: (-faces[name], name)):
        while held[name] < wanted[name]:
            found = _all_of(job, held | {name: held[name] + 1})
            if found is None:
                break
            best, held[name] = found, held[name] + 1
    left = sum(faces[name] * (wanted[name] - held[name]) for name in wanted)
    return answer if best is None or left >= least else _instead(job, answer, best)


def _all_of(job: Job, wanted: Mapping[str, int]) -> Answer | None:
    """Return the answer to the job with so many of each part, None where they do not all lie."""
    parts = tuple(
        replace(part, quantity=wanted[part.id]) for part in job.parts if wanted.get(part.id)
    )
    if not parts:
        return None
    found = answered(replace(job, parts=parts), 0)
    return found if found.verdict == "enough" else None


def _instead(job: Job, answer: Answer, found: Answer) -> Answer:
    cut: dict[str, int] = {}
    for layout in found.layouts:
        for piece in layout.pieces:
            cut[piece.part] = cut.get(piece.part, 0) + 1
    missing = tuple(
        Missing(part.id, part.quantity - cut.get(part.id, 0))
        for part in job.parts
        if cut.get(part.id, 0) < part.quantity
    )
    return replace(answer, layouts=found.layouts, missing=missing, value=found.value)
