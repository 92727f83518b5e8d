"""The wheel, built from the source archive, works in a fresh environment and in another folder."""

import os
import shutil
import subprocess
import sys
import tarfile
import zipfile
from pathlib import Path
from typing import NamedTuple

import pytest

ROOT = Path(__file__).resolve().parents[2]

# The tests of this module share one build; under `pytest -n` they stay in one worker.
pytestmark = pytest.mark.xdist_group("wheel")


class Installed(NamedTuple):
    """What a user gets: the two archives, and an environment with the wheel and nothing else."""

    sdist: Path
    wheel: Path
    environment: Path

    def run(self, *command: str, cwd: Path) -> subprocess.CompletedProcess[str]:
        """Run a program of the environment in a folder, blind to the checkout and the user."""
        program, *arguments = command
        kept = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
        return subprocess.run(
            [self.environment / "bin" / program, *arguments],
            cwd=cwd,
            env=kept | {"XDG_CONFIG_HOME": str(cwd / "config")},
            capture_output=True,
            text=True,
            check=False,
        )


@pytest.fixture(scope="session")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Installed:
    folder = tmp_path_factory.mktemp("wheel")
    _succeed(sys.executable, "-m", "build", "--outdir", str(folder), str(ROOT))
    (sdist,), (wheel,) = folder.glob("*.tar.gz"), folder.glob("*.whl")
    _succeed(sys.executable, "-m", "venv", str(folder / "environment"))
    python = folder / "environment" / "bin" / "python"
    _succeed(str(python), "-m", "pip", "install", "--quiet", str(wheel))
    return Installed(sdist, wheel, folder / "environment")


def _succeed(*command: str) -> None:
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.fixture
def elsewhere(tmp_path: Path) -> Path:
    """A folder that holds the notes of the step stool and nothing else."""
    shutil.copy(ROOT / "examples" / "step_stool.dryfit", tmp_path)
    return tmp_path


def _files(folder: Path) -> set[str]:
    return {
        path.relative_to(folder).as_posix()
        for path in folder.rglob("*")
        if path.is_file() and path.suffix != ".pyc"
    }


def test_the_wheel_holds_every_file_of_the_package_the_grammar_and_the_templates(
    installed: Installed,
) -> None:
    with zipfile.ZipFile(installed.wheel) as archive:
        held = {name for name in archive.namelist() if ".dist-info/" not in name}
    expected = {f"dryfit/{name}" for name in _files(ROOT / "src" / "dryfit")}
    for folder in ("grammar", "templates"):
        assert _files(ROOT / folder), f"{folder}/ is empty"
        expected |= {f"dryfit/{folder}/{name}" for name in _files(ROOT / folder)}
    assert held == expected


def test_the_source_archive_holds_the_tests_and_the_examples(installed: Installed) -> None:
    with tarfile.open(installed.sdist) as archive:
        held = {name.partition("/")[2] for name in archive.getnames()}
    wanted = {"pyproject.toml", "README.md", "LICENSE", ".ci/run", "tests/e2e/test_wheel.py"}
    assert wanted | {"examples/step_stool.dryfit"} <= held


@pytest.mark.parametrize("name", ["grammar", "templates"])
def test_the_folders_are_found_inside_the_installed_package(
    installed: Installed, tmp_path: Path, name: str
) -> None:
    code = f"from dryfit.resources import root; print(root({name!r}))"
    done = installed.run("python", "-c", code, cwd=tmp_path)
    found = Path(done.stdout.strip())
    assert found.is_relative_to(installed.environment.resolve()), done.stderr
    assert found.parts[-2:] == ("dryfit", name)


def test_check_finds_no_error_in_the_step_stool(installed: Installed, elsewhere: Path) -> None:
    done = installed.run("dryfit", "check", "step_stool.dryfit", cwd=elsewhere)
    assert done.returncode == 0, done.stdout + done.stderr


def test_booklet_writes_into_the_folder_it_runs_in_and_names_what_it_wrote(
    installed: Installed, elsewhere: Path
) -> None:
    done = installed.run("dryfit", "booklet", "step_stool.dryfit", cwd=elsewhere)
    assert done.returncode == 0, done.stdout + done.stderr
    written = {(elsewhere / line).name for line in done.stdout.splitlines()}
    assert "step_stool.html" in written
    assert written <= _files(elsewhere)
    page = (elsewhere / "step_stool.html").read_text(encoding="utf-8")
    assert page.lower().startswith("<!doctype html>")
    assert 'data-visit="1"' in page
    assert "font/woff2;base64," in page


def test_the_package_runs_as_a_module_too(installed: Installed, elsewhere: Path) -> None:
    done = installed.run("python", "-m", "dryfit", "check", "step_stool.dryfit", cwd=elsewhere)
    assert done.returncode == 0, done.stdout + done.stderr
