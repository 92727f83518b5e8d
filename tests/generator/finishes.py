"""Lines of finish and wishes for the order: for all, by part, by surface, before a glue-up."""

from tests.generator.page import Page

INDOORS = (
    "oil varnish, 2 coats, 24 h apart",
    "oil varnish",
    "hard wax oil, 2 coats, 8 h apart",
    "shellac, 3 coats, 2 h apart",
    "water-based varnish, 3 coats, 4 h apart",
    "oil, 2 coats",
    "paint",
    "shellac 2 coats then wax 1 coat",
    "primer 1 coat then milk paint 2 coats, 2 h apart",
    "wax",
    "brushed varnish, 2 coats",
)
OUTDOORS = ("oil, 2 coats", "paint, 3 coats, 6 h apart", "brushed varnish, 3 coats, 24 h apart")
SURFACES = ("faces", "underside", "top faces", "outside", "inside")


def finish(page: Page, panels: tuple[str, ...] = ()) -> None:
    """Write how the piece is finished; `panels` may be finished before what takes them in."""
    draw = page.draw
    products = OUTDOORS if page.outdoors else INDOORS
    if draw.chance(8):
        return
    named = list(draw.some(page.bare, 1)) if draw.chance(40) else []
    for part in named:
        surface = draw.one_of(SURFACES) + " of " if draw.chance(40) else ""
        page.wishes.append(f"finish {surface}{part} with {draw.one_of(products)}")
    if draw.chance(20) and (others := [each for each in page.bare if each not in named]):
        part = draw.one_of(others)
        surface = draw.one_of(("underside of ", "inside of ", "bottom face of ", ""))
        page.wishes.append(f"no finish on {surface}{part}")
    rest = page.either("", "", "everything else with ") if named else ""
    page.wishes.append(f"finish {rest}{draw.one_of(products)}")
    for panel in panels:
        if page.stages and draw.chance(45):
            page.wishes.append(f"finish {panel} before glue up {page.stages[-1]}")
