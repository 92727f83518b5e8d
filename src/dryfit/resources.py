"""Where the folders grammar/ and templates/ are: in a checkout, or in the installed package."""

from pathlib import Path
from typing import Literal

PACKAGE = Path(__file__).resolve().parent


def root(name: Literal["grammar", "templates"], package: Path = PACKAGE) -> Path:
    """The folder of that name: beside src/ in a checkout, else inside `package`.

    A real path, because grammars import one another by it and stylesheets find their fonts by it.

    Raises
    ------
    FileNotFoundError
        The installation is not whole: neither place holds the folder.
    """
    checkout = package.parents[1]
    places = [package / name]
    if (checkout / "pyproject.toml").is_file():
        places.insert(0, checkout / name)
    for place in places:
        if place.is_dir():
            return place
    looked = " or ".join(str(place) for place in places)
    raise FileNotFoundError(f"the folder `{name}` of dryfit is missing: looked for {looked}")
