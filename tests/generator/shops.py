"""Random shops: a few limits, machines, cutters or clamps other than in the shipped one."""

import re

from tests.generator.draw import Draw

CHANGES = (
    "station.mortiser = false",
    'cutter."dado" = false',
    'station."band saw" = false',
    "station.sander = false",
    'station."router table" = false',
    "station.jointer = false\nstation.planer = false",
    'station."drill press" = false',
    'accessory."sled" = { station = "table saw", base = "15 mm", longest = "900 mm" }',
    'accessory."sled" = { station = "table saw", base = "9 mm", longest = "450 mm" }',
    'accessory."sled" = { station = "table saw", base = "1/2 in", longest = "24 in" }',
    'cutter."combination blade" = { station = "table saw", width = "1/8 in" }',
    'cutter."combination blade" = { station = "table saw", width = "2.4 mm" }',
    (
        'cutter."dado" = { station = "table saw", widths = "1/4 in to 13/16 in by 1/64 in", '
        'kind = "set" }'
    ),
    'cutter."chisel 14" = { station = "mortiser", width = "14 mm" }',
    'cutter."chisel 6" = false',
    'cutter."drill 35" = { station = "drill press", width = "35 mm" }',
    'station."table saw".limits.depth = "63 mm"',
    'station."table saw".limits.widest_rip = "500 mm"',
    'station."table saw".limits.shortest_crosscut = "100 mm"',
    'station."table saw".axis.stop = { change = "4 min" }',
    'station.planer.limits.widest = "250 mm"',
    'station.planer.limits.shortest = "200 mm"',
    'station.jointer.limits.widest = "260 mm"',
    'station.mortiser.limits.depth = "60 mm"',
    'station."router table".limits.longest = "800 mm"',
    'station."drill press".limits.throat = "200 mm"',
    'clamp."bar 1200" = { opens = "1200 mm", count = 4 }',
    'clamp."bar 800" = { opens = "800 mm", count = 4 }',
    'clamp."bar 2000" = { opens = "2000 mm", count = 4 }',
    "one_room = false",
    'walk = "2 min"',
    'hours = "09:00-13:00"',
    'hours = "18:00-21:30"',
    "days_off = []",
    'default_glue = "slow white glue"',
    'allowance.snipe = "20 mm"',
    'allowance.longest_gang = "700 mm"',
    'allowance.rough_length = "40 mm"',
    'allowance.through_cut = "2 mm"',
)


def random_shop(seed: int) -> str | None:
    """Return a shop file for one that differs a little from the shipped one, or None for that."""
    draw = Draw(f"shop {seed}")
    if draw.chance(40):
        return None
    chosen: dict[str, str] = {}
    for _ in range(draw.between(1, 4)):
        change = draw.one_of(CHANGES)
        chosen.setdefault(_owner(change), change)
    lines = sorted((*chosen.values(), *_calendar(seed)), key=lambda line: line.split(" = ")[0])
    return "\n".join(['format = "dryfit-shop/1"', f'name = "Shop {seed}"', *lines]) + "\n"


def _calendar(seed: int) -> list[str]:
    """Return when and where there is work: a lot of its own, so that it shifts no other."""
    draw = Draw(f"calendar {seed}")
    return [
        line
        for share, line in (
            (30, draw.one_of(('start = "Wednesday"', 'start = "2026-12-19"'))),
            (30, f'station."glue bench".places = {draw.between(1, 2)}'),
            (20, f'station."finish bench".places = {draw.between(1, 2)}'),
            (20, "workers = 2"),
        )
        if draw.chance(share)
    ]


def _owner(change: str) -> str:
    """Return what a change speaks of, so that no shop takes a machine away and sets its limits."""
    key = change.split(" = ", maxsplit=1)[0]
    machine = re.match(r'(?:station|cutter|accessory)\.("[^"]+"|\w+)', key)
    owner = machine.group() if machine else key
    return "station.jointer" if owner == "station.planer" else owner
