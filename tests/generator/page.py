"""A page of notes while it is written: its lines by theme, its unit, and the parts so far."""

from dataclasses import dataclass, field
from fractions import Fraction

from tests.generator.draw import Draw

INCH = Fraction(254, 10)
MM_STEPS = ((30, Fraction(1)), (150, Fraction(1)), (10**6, Fraction(5)))
INCH_STEPS = ((30, INCH / 16), (150, INCH / 8), (10**6, INCH / 2))
"""Up to so many mm a maker rounds to this step."""
SOLID = ("oak", "ash", "beech", "cherry", "walnut", "maple", "pine", "larch", "white oak")
SHEETS = ("birch ply", "poplar ply", "MDF")


@dataclass(slots=True)
class Page:
    """What is written so far; every length is held in mm and written in the unit of the piece.

    `glued` are the parts (plural name, count) that a glue-up has to take in, `bare` the parts that
    a finish line may name, `stages` the glue-ups that are written.
    """

    draw: Draw
    inches: bool
    title: str = "Thing"
    overall: tuple[Fraction, Fraction, Fraction] = (Fraction(0), Fraction(0), Fraction(0))
    header: list[str] = field(default_factory=list)
    values: list[str] = field(default_factory=list)
    patterns: list[str] = field(default_factory=list)
    parts: list[str] = field(default_factory=list)
    cuts: list[str] = field(default_factory=list)
    bought: list[str] = field(default_factory=list)
    glue: list[str] = field(default_factory=list)
    wishes: list[str] = field(default_factory=list)
    bare: list[str] = field(default_factory=list)
    stages: list[str] = field(default_factory=list)
    outdoors: bool = False

    def size(self, low: int, high: int) -> Fraction:
        """Return a length between two of whole mm, rounded as a maker would in his unit."""
        steps = INCH_STEPS if self.inches else MM_STEPS
        step = next(step for top, step in steps if high <= top)
        least, most = -(-Fraction(low) // step), Fraction(high) // step
        return step * self.draw.between(int(least), max(int(most), int(least)))

    def rounded(self, length: Fraction) -> Fraction:
        """Return a length, rounded down to 1 mm or 1/16 in."""
        step = INCH / 16 if self.inches else Fraction(1)
        return length // step * step

    def say(self, length: Fraction) -> str:
        """Return a length as a number of the notes: 17.5, or 17 1/2 on a page of inches."""
        if not self.inches:
            shown = f"{float(length):.2f}".rstrip("0").rstrip(".")
            return shown if Fraction(shown) == length else f"{length} "
        whole, rest = divmod(length / INCH, 1)
        if not rest:
            return str(whole)
        fraction = f"{rest.numerator}/{rest.denominator}"
        return f"{whole} {fraction}" if whole else fraction

    def sizes(self, *lengths: Fraction) -> str:
        """Return lengths as `55 x 20`."""
        return " x ".join(self.say(each) for each in lengths)

    def value(self, name: str, length: Fraction) -> str:
        """Return the figure, or the name of a value that is declared for it."""
        if self.draw.chance(60):
            return self.say(length)
        let = "let " if self.draw.chance(30) else ""
        self.values.append(
            f"{let}{name} {self.draw.one_of(('=', 'be') if let else ('=', 'is'))} "
            f"{self.say(length)}"
        )
        return name

    def either(self, *ways: str) -> str:
        """Return one of several ways to say it."""
        return self.draw.one_of(ways)

    def part(self, line: str, *names: str) -> None:
        """Write the line of a part; `names` are the plurals that a finish may speak of."""
        self.parts.append(line)
        self.bare.extend(names)

    def measures(self, wide: Fraction, deep: Fraction, high: Fraction) -> None:
        """Set the size of the finished piece."""
        self.overall = (wide, deep, high)

    def stage(self, name: str, members: str, *, joints: int = 4, count: int = 1) -> None:
        """Write a glue-up, with a glue that leaves time for so many joints."""
        self.stages.append(name)
        self.glue.append(
            f"glue up {f'{count} ' if count > 1 else ''}{name}: {members}{self._glue(joints)}"
        )

    def _glue(self, joints: int) -> str:
        slow = ("polyurethane", "epoxy") if self.outdoors else ("slow white glue", "epoxy")
        words = ""
        if self.outdoors or joints > 6 or self.draw.chance(20):
            words += f", with {self.draw.one_of(slow if joints <= 10 else ('epoxy',))}"
        elif self.draw.chance(10):
            words += ", with liquid hide glue"
        if self.draw.chance(25):
            words += f", cure {self.draw.one_of(('1 h', '90 min', '2 h', '1 1/2 h', '12 h'))}"
        if joints > 10 or self.draw.chance(10):
            words += ", 2 people"
        return words

    def text(self) -> str:
        """Return the whole page."""
        wide, deep, high = (self.say(each) for each in self.overall)
        units = "inches to 1/16" if self.inches else self.either("mm", "mm", "mm, to nearest 1")
        cross = self.either(
            f"{wide} wide, {deep} deep, {high} high", f"{wide} wide x {deep} deep x {high} high"
        )
        body = [*self.parts, *self.cuts, *self.bought]
        if self.draw.chance(12):
            body = list(self.draw.shuffled(body))
        lines = [
            f"piece {self.title}",
            f"units {units}",
            f"overall {cross}",
            *self.header,
            "",
            *self.patterns,
            *self.values,
            *body,
            "",
            *self.glue,
            *self.wishes,
        ]
        return "\n".join(lines) + "\n"
