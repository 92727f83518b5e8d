"""Hours, cures, clamps and sums of a plan, worked out again from its own moments."""

from collections import Counter
from collections.abc import Iterator
from datetime import date, timedelta
from fractions import Fraction

from tests.property.plan_oracle.durations import exact, millimetres, minutes
from tests.property.plan_oracle.reading import Json, Row, length, rows_of
from tests.property.plan_oracle.sequence import members

DAY = 24 * 60
DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
DUSTY = ("mitre saw", "band saw", "jointer", "planer", "table saw", "router table", "sander")
LAG_BEFORE = {
    "level": "level",
    "sand 120": "level",
    "flatten": "machine",
    "coat 1": "finish",
    "measure": "out of clamps",
    "glue up": "next stage",
}


class Hours:
    """The working hours of the shop, in minutes since the first work minute of day 1."""

    def __init__(self, shop: Json) -> None:
        """Read hours and days off; day 1 is a Monday, or the first worked from the start on."""
        opens, closes = (_clock(each) for each in shop["hours"].split("-"))
        self.opens, self.long = opens, closes - opens
        self.off = {DAYS.index(each) for each in shop["days_off"] if each in DAYS}
        self.single = {each for each in shop["days_off"] if each not in DAYS}
        start = shop.get("start", "Monday")
        # Without a date any Monday will do, and no single day off is known to lie near.
        self.first = date.fromisoformat(start) if start not in DAYS else date(2024, 1, 1)
        if start in DAYS:
            self.single = set()
            self.first += timedelta(days=DAYS.index(start))
        while not self.working(0):
            self.first += timedelta(days=1)

    def working(self, day: int) -> bool:
        """Whether the day, counted from 0, is a working day."""
        then = self.first + timedelta(days=day)
        return then.weekday() not in self.off and then.isoformat() not in self.single

    def between(self, start: Fraction, end: Fraction) -> Fraction:
        """The working minutes between two moments."""
        total = Fraction(0)
        for day in range(int(start // DAY), int(end // DAY) + 1):
            if self.working(day):
                low = max(start, Fraction(day * DAY))
                high = min(end, Fraction(day * DAY + self.long))
                total += max(Fraction(0), high - low)
        return total

    def back(self, end: Fraction, worked: Fraction) -> Fraction:
        """The moment from which on, up to the end, so many working minutes pass."""
        day, moment = int(end // DAY), end
        while True:
            opens = Fraction(day * DAY)
            until = min(moment, opens + self.long) if self.working(day) else opens
            if worked <= until - opens:
                return until - worked
            worked -= until - opens
            day, moment = day - 1, opens

    def in_one_day(self, start: Fraction, end: Fraction) -> bool:
        """Whether both moments lie in the hours of one working day."""
        day = int(start // DAY)
        return self.working(day) and end - day * DAY <= self.long


def _clock(text: str) -> int:
    hour, minute = text.split(":")
    return 60 * int(hour) + int(minute)


def moments(steps: Json, shop: Json) -> Iterator[str]:
    """Steps one after the other, as long as their minutes, inside working hours."""
    hours = Hours(shop)
    free = Fraction(0)
    for step in steps["steps"]:
        start, end = exact(step["starts"]["minute"]), exact(step["ends"]["minute"])
        name = f"step {step['number']}"
        if start < free:
            yield f"{name} starts before the one before has ended"
        work = exact(step["minutes"]["work"])
        named = ("walk", "changeover", "tests")
        setup = sum((exact(step["minutes"][each]) for each in named), Fraction(0))
        # A machine may be set while the maker waits for glue: then the step starts after it.
        if hours.between(start, end) < work or hours.between(free, end) < setup + work:
            yield f"{name} takes {setup} + {work} min, {free} to {start} to {end}"
        free = end
        for moment in (step["starts"], step["ends"]):
            minute = exact(moment["minute"])
            day, clock = divmod(int(minute) + hours.opens, DAY)
            if moment["day"] != day + 1 or moment["clock"] != f"{clock // 60:02}:{clock % 60:02}":
                yield f"{name}: {moment} does not agree with itself"
            if not hours.in_one_day(minute, minute):
                yield f"{name}: {moment} is outside the working hours"
        whole = {"glue up", "lip"} | {f"coat {n}" for n in range(1, 9)}
        deeds = {_deed(row["operation"]) for row in step["work"]}
        # What is measured at the bench may be the beginning of a long step there.
        if deeds & whole or deeds == {"measure"}:
            begun = end - exact(step["minutes"]["work"])
            if not hours.in_one_day(begun, end):
                yield f"{name} cannot be left lying overnight"
        said = [tuple(row.values()) for row in step["waits_for"]]
        if len(set(said)) < len(said):
            yield f"{name} says twice what it waits for"
        for row in step["waits_for"]:
            earlier = steps["steps"][row["step"] - 1]
            if start < exact(earlier["ends"]["minute"]) + exact(row["lag_minutes"]):
                yield f"{name} does not wait {row['lag_minutes']} min for {row['operation']}"


def _deed(operation: str) -> str:
    return operation.partition(" / ")[2].partition(" / ")[0]


def cures(steps: Json, parts: Json) -> Iterator[str]:
    """Nothing is done with a glued thing before the wait that it needs; coats dry."""
    rows = list(rows_of(steps))
    for glued in (row for row in rows if row.deed == "glue up"):
        lags = {each["until"]: exact(each["minutes"]) for each in glued.step["lags"]}
        inside = members(glued.subject, parts) | {glued.subject}
        end = exact(glued.step["ends"]["minute"])
        for row in rows:
            if row.number <= glued.number or not inside & _touched(row, parts):
                continue
            lag = lags.get(LAG_BEFORE.get(row.deed, "out of clamps"), Fraction(0))
            if exact(row.step["starts"]["minute"]) < end + lag:
                yield f"{row.work['operation']} comes too soon after {glued.work['operation']}"
    for coat in (row for row in rows if row.deed.startswith("coat ")):
        dry = exact(coat.step["ends"]["minute"]) + exact(coat.step["minutes"]["after"])
        for row in rows:
            again = row.subject == coat.subject and row.number > coat.number
            if (again or row.deed == "fit") and exact(row.step["starts"]["minute"]) < dry:
                yield f"{row.work['operation']} comes before {coat.work['operation']} is dry"


def _touched(row: Row, parts: Json) -> set[str]:
    """The copies that a row works on; where it names none, all that its subject stands for."""
    names = row.copies or [row.subject]
    return {copy for name in names for copy in members(name, parts)}


def dust(steps: Json, shop: Json) -> Iterator[str]:
    """In one room no dust is made while a coat is wet (TRADE D7, H68)."""
    if not shop["one_room"]:
        return
    hours = Hours(shop)
    for coat in steps["steps"]:
        product = coat["settings"].get("product")
        if product not in shop["finish"] or coat["station"] != "finish bench":
            continue
        end = exact(coat["ends"]["minute"])
        for step in steps["steps"]:
            # Set up may be in the evening before; test cuts make dust, right before the work.
            dusty = exact(step["minutes"]["tests"]) + exact(step["minutes"]["work"])
            start = hours.back(exact(step["ends"]["minute"]), dusty)
            wet = end + minutes(shop["finish"][product]["dust_free"])
            if step["station"] in DUSTY and end <= start < wet:
                yield f"step {step['number']} makes dust while {coat['id']} is wet"


def clamps(steps: Json, shop: Json) -> Iterator[str]:
    """No more clamps than the shop has at any moment, and as many as each glue-up needs."""
    count = {name: row["count"] for name, row in shop["clamp"].items() if row}
    held: list[tuple[Fraction, Fraction, str, int]] = []
    for step in steps["steps"]:
        taken = step["holds"]["clamps"]
        if "clamps" in step:
            needed = _as_many_as_there_are(step["clamps"], shop["clamp"])
            if needed != sum(row["count"] for row in taken):
                yield f"step {step['number']} needs {needed} clamps and takes {taken}"
            longest = max((length(row["length"]) for row in step["clamps"]), default=Fraction(0))
            opens = [millimetres(shop["clamp"][row["clamp"]]["opens"]) for row in taken]
            if longest > max(opens, default=Fraction(0)):
                yield f"step {step['number']}: no clamp opens {longest}"
        off = exact(step["ends"]["minute"]) + exact(step["minutes"]["after"])
        begun = exact(step["ends"]["minute"]) - exact(step["minutes"]["work"])
        held += [(begun, off, row["clamp"], row["count"]) for row in taken]
    for start, _, name, _ in held:
        at_once = sum(n for low, high, each, n in held if each == name and low <= start < high)
        if at_once > count.get(name, 0):
            yield f"{at_once} of {count.get(name, 0)} {name} are in use at {start}"


def _as_many_as_there_are(rows: list[Json], shop: Json) -> int:
    """How many clamps can serve: with too few in the shop, which is warned of, less than asked."""
    served = 0
    for long in sorted({length(row["length"]) for row in rows}, reverse=True):
        asked = sum(row["count"] for row in rows if length(row["length"]) == long)
        there = sum(each["count"] for each in shop.values() if each and _opens(each) >= long)
        served = min(served + asked, there)
    return served


def _opens(clamp: Json) -> Fraction:
    return millimetres(clamp["opens"])


def places(steps: Json, shop: Json) -> Iterator[str]:
    """No more glue-ups in clamps, and coats that dry, than the shop has places for (TRADE C2.5)."""
    for station, deeds in (("glue bench", ("glue up", "lip")), ("finish bench", ("coat",))):
        there = shop["station"][station].get("places")
        lying: list[tuple[Fraction, Fraction]] = []
        # Strips have rows of their own beside those of the parts that they are glued on.
        rows = {row.work["operation"]: row for row in rows_of(steps)}
        for row in rows.values():
            if there is not None and row.deed.startswith(deeds):
                end = exact(row.step["ends"]["minute"])
                begun = end - exact(row.step["minutes"]["work"])
                lying.append((begun, end + exact(row.step["minutes"]["after"])))
        for begun, _ in lying:
            if sum(low <= begun < high for low, high in lying) > (there or len(lying)):
                yield f"more than {there} lie at the {station} at {begun}"


def totals(steps: Json, shop: Json) -> Iterator[str]:
    """The totals are the sums of the steps (CONTRACTS, steps)."""
    found, rows, hours = steps["totals"], steps["steps"], Hours(shop)
    spent: Counter[str] = Counter()
    for step in rows:
        for name, value in step["minutes"].items():
            spent[name] += int(10 * exact(value))
        if sum(exact(row["minutes"]) for row in step["work"]) != exact(step["minutes"]["work"]):
            yield f"step {step['number']}: the minutes of its work do not add up"
    end = exact(rows[-1]["ends"]["minute"])
    dry = max(exact(step["ends"]["minute"]) + exact(step["minutes"]["after"]) for step in rows)
    setup = spent["changeover"] + spent["walk"] + spent["tests"]
    wanted = {
        "changeovers": 10 * sum(len(step["changed"]) for step in rows),
        "changeover_minutes": spent["changeover"],
        "walk_minutes": spent["walk"],
        "test_minutes": spent["tests"],
        "setup_minutes": setup,
        "work_minutes": spent["work"],
        "attended_minutes": setup + spent["work"],
        "elapsed_minutes": int(10 * dry),
        "waiting_minutes": int(10 * hours.between(Fraction(0), end)) - setup - spent["work"],
    }
    for name, tenths in wanted.items():
        if 10 * exact(found[name]) != tenths:
            yield f"{name} is {found[name]}, but the steps add up to {tenths / 10}"
    visits, station = 0, None
    for step in rows:
        visits += step["station"] != station
        walked = step["station"] != station
        if step["visit"] != visits:
            yield f"step {step['number']} is in visit {step['visit']} instead of {visits}"
        if (step["minutes"]["walk"] > 0) != walked:
            yield f"step {step['number']}: walks {step['minutes']['walk']} min"
        station = step["station"]
