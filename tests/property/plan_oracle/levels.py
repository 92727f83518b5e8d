"""Laps are planed level before anything else is done to the faces of the glued whole."""

from collections.abc import Iterator

from tests.property.plan_oracle.reading import Json
from tests.property.plan_oracle.sequence import members, places_of

_SURFACES = ("sand ", "ease ", "coat ")


LEVELLED = {"half lap", "bridle", "box joint", "through dovetail", "half-blind dovetail"}


def levelling(steps: Json, parts: Json) -> Iterator[str]:
    """Whatever touches the faces of a lapped assembly between its glue and its levelling."""
    places = places_of(steps)
    for assembly in parts["assemblies"]:
        name = assembly["name"]
        if not _lapped(name, parts):
            continue
        glued = places.deeds.get((name, "glue up"), [])
        level = places.deeds.get((name, "level"), [])
        if len(level) != 1 or len(glued) != 1 or level[0] < glued[0]:
            yield f"{name}: glued at {glued}, levelled at {level}"
            continue
        inside = members(name, parts)
        for row in places.rows[glued[0] + 1 : level[0]]:
            if not inside & set(row.copies):
                continue
            on_surface = row.deed.startswith(_SURFACES) and not row.deed.startswith("sand inside")
            if on_surface or row.work["features"]:
                yield f"{name}: {row.deed} on {row.subject} comes before its laps are levelled"


def _lapped(name: str, parts: Json) -> bool:
    """Whether a glue-up closes a half lap that no glue-up inside it has closed before."""
    of = next(each["of"] for each in parts["assemblies"] if each["name"] == name)
    entering = [members(each, parts) for each in of]
    whole = members(name, parts)
    return any(
        joint["kind"] in LEVELLED
        and set(joint["between"]) <= whole
        and not any(set(joint["between"]) <= each for each in entering)
        for joint in parts["joints"]
    )
