from pathlib import Path

import pytest

from dryfit.resources import root


def _package_in(folder: Path) -> Path:
    package = folder / "src" / "dryfit"
    package.mkdir(parents=True)
    return package


def test_a_checkout_gives_its_own_folder_even_beside_a_copy_in_the_package(tmp_path: Path) -> None:
    package = _package_in(tmp_path)
    (tmp_path / "pyproject.toml").touch()
    (tmp_path / "grammar").mkdir()
    (package / "grammar").mkdir()
    assert root("grammar", package) == tmp_path / "grammar"


def test_an_installed_package_gives_the_folder_inside_it(tmp_path: Path) -> None:
    package = _package_in(tmp_path)
    (tmp_path / "templates").mkdir()  # somebody else's, two folders up
    (package / "templates").mkdir()
    assert root("templates", package) == package / "templates"


def test_a_missing_folder_is_named_with_the_places_that_were_looked_at(tmp_path: Path) -> None:
    package = _package_in(tmp_path)
    with pytest.raises(FileNotFoundError, match="`grammar` of dryfit is missing") as caught:
        root("grammar", package)
    assert str(package / "grammar") in str(caught.value)


def test_the_templates_of_this_installation_hold_the_font() -> None:
    assert (root("templates") / "fonts" / "Inter-Regular.woff2").is_file()
