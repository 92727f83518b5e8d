"""Families of joints, one module each; a family is loaded when the notes name it."""

from __future__ import annotations

from importlib import import_module

from dryfit.kinds.joints import lets_move
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import Finder
from dryfit.placing.glue_patches import says_glue, says_held

BY_JOINT = {
    "bridle": "bridle",
    "tongue and groove": "tongue_groove",
    "ship lap": "ship_lap",
    "tenon": "tenon",
    "round tenon": "round_tenon",
    "housing": "housing",
    "rabbet": "rabbet",
    "dowels": "dowels",
    "biscuits": "biscuits",
    "loose tenon": "loose_tenon",
    "pocket screws": "pocket_screws",
    "mitre": "mitre",
    "box joint": "box_joint",
    "through dovetail": "dovetails",
    "half-blind dovetail": "dovetails",
    "shelf pins": "shelf_pins",
    "hinges": "hinges",
    "screws": "screws",
    "glue": "glued_butt",
}
"""By the kind of joint that a line names.  Buttons are found by `fastenings`, what else
holds tops by `top_fixings`."""
BY_PREPOSITION = {
    "crossing": "half_lap",
    "inside": "groove",
    "onto": "rest",
    "under": "rest",
    "runs in": "runner",
    "runs under": "bottom_runner",
}
"""By the word between two parts, where no joint is named."""
DROPPED_IN, ITS_SCREWS = "back_rabbet", "rabbet_screws"
"""What drops into rabbets all round a frame or case, and the screws that hold it there."""
_FACING = frozenset({"onto", "under", "on face", "against"})


def family_of(contact: Contact) -> str | None:
    """Return the family of a declared contact, or None for one that cuts and holds nothing."""
    kind = contact.joint.kind if contact.joint else None
    if contact.preposition == "fixed":
        return ITS_SCREWS
    if contact.in_rabbets:
        return DROPPED_IN
    if kind is not None and lets_move(kind):
        return None
    if kind in BY_JOINT:
        return BY_JOINT[kind]
    if kind is None and contact.preposition in _FACING:
        if says_glue(contact):
            return "glued_butt"
        if says_held(contact):
            return "rest"
    return BY_PREPOSITION.get(contact.preposition)


def finder_of(family: str) -> Finder:
    """Return how a family finds its joints."""
    finder: Finder = import_module(f"{__name__}.{family}").find
    return finder
