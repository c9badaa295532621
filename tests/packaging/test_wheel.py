"""The wheel holds all that the checkout runs on, and does the same work, installed alone in an empty place."""

import json
import os
import shutil
import subprocess
import sys
import sysconfig
import tarfile
import zipfile
from pathlib import Path

import pytest

from booklet import __version__, bootstrap

ROOT = Path(bootstrap.ROOT)
DEMO, TINY = ROOT, ROOT / "tests" / "books" / "tiny"
WORK = [   # binding the demo book twice would take a third of the time of all tests
    (DEMO, ["--version"]),
    (DEMO, ["lint"]),
    (DEMO, ["tally", "cloud-shadow", "--json"]),
    (DEMO, ["draw", "cloud-shadow"]),
    (TINY, ["single", "morning-cloud"]),
    (TINY, ["build", "--format", "pdf,html"]),
    (DEMO, ["new", "breeze", "--shape", "triangle", "--base", "7"]),
]


def run(command, cwd, **more):
    """Run a command that must succeed; give what it wrote to standard output."""
    clean = {name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "PYTHONHOME")}
    done = subprocess.run(command, cwd=cwd, capture_output=True, text=True, encoding="utf-8", env=clean | more)
    assert done.returncode == 0, f"{command}: {done.stdout}{done.stderr}"
    return done.stdout


def build(target, source, folder):
    """Let the build backend make the wheel or the sdist, without the network."""
    run([sys.executable, "-m", "hatchling", "build", "--target", target, "--directory", str(folder)], source)
    (made,) = folder.iterdir()
    return made


def files_below(folder, of=""):
    """The files that a checkout has below a folder, as wheel names."""
    found = (path for path in (ROOT / folder).rglob("*") if path.is_file())
    return {f"{of}{path.relative_to(ROOT).as_posix()}" for path in found
            if "__pycache__" not in path.parts and not path.name.startswith(".")}


def names_in(wheel):
    with zipfile.ZipFile(wheel) as archive:
        return {name for name in archive.namelist() if ".dist-info/" not in name}


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    return build("wheel", ROOT, tmp_path_factory.mktemp("wheel"))


@pytest.fixture(scope="module")
def sdist(tmp_path_factory):
    packed = build("sdist", ROOT, tmp_path_factory.mktemp("sdist"))
    with tarfile.open(packed) as archive:
        folder = tmp_path_factory.mktemp("unpacked")
        archive.extractall(folder, **({"filter": "data"} if hasattr(tarfile, "data_filter") else {}))
    (source,) = folder.iterdir()
    return source


def test_the_wheel_holds_the_package_the_templates_and_nothing_else(wheel):
    templates = files_below("templates", of="booklet/")
    assert templates
    assert names_in(wheel) == files_below("booklet") | templates


def test_the_wheel_says_what_it_is(wheel):
    with zipfile.ZipFile(wheel) as archive:
        (folder,) = {name.split("/")[0] for name in archive.namelist() if ".dist-info/" in name}
        said = archive.read(f"{folder}/METADATA").decode("utf-8")
        points = archive.read(f"{folder}/entry_points.txt").decode("utf-8")
        licence = archive.read(f"{folder}/licenses/LICENSE")
    assert folder == f"booklet-{__version__}.dist-info"
    assert "License-Expression: MIT\n" in said
    assert "Requires-Python: >=3.10\n" in said
    assert points == "[console_scripts]\nbooklet = booklet.cli:main\n"
    assert licence == (ROOT / "LICENSE").read_bytes()


def test_two_builds_give_the_same_bytes(wheel, tmp_path):
    assert build("wheel", ROOT, tmp_path).read_bytes() == wheel.read_bytes()


def test_the_sdist_holds_the_sources_and_no_output(sdist):
    top = {path.name for path in sdist.iterdir()}
    assert {"booklet", "templates", "patterns", "tests", "pyproject.toml", "LICENSE"} <= top
    assert not {"build", "dist", ".venv", ".venv.lock", ".git"} & top
    assert not list(sdist.rglob("__pycache__"))


def test_the_sdist_gives_the_same_wheel(sdist, wheel, tmp_path):
    again = build("wheel", sdist, tmp_path)
    assert names_in(again) == names_in(wheel)


@pytest.fixture(scope="module")
def installed(wheel, tmp_path_factory):
    """The `booklet` command of an environment that holds the wheel, and beside it only what ours is run with."""
    folder = tmp_path_factory.mktemp("env")
    run([sys.executable, "-m", "venv", str(folder)], folder)
    binaries = folder / ("Scripts" if bootstrap.WINDOWS else "bin")
    python = binaries / ("python.exe" if bootstrap.WINDOWS else "python")
    run([str(python), "-m", "pip", "install", "--no-index", "--no-deps", str(wheel)], folder)
    (packages,) = folder.rglob("site-packages")
    needs = {sysconfig.get_path("purelib"), sysconfig.get_path("platlib")}
    (packages / "needs.pth").write_text("\n".join(sorted(needs)), encoding="utf-8")
    where = run([str(python), "-c", "import booklet; print(booklet.__file__)"], folder)
    assert Path(where.strip()).is_relative_to(packages), "the checkout must not be what is tried here"
    return binaries / "booklet"


def two_books(book, tmp_path):
    """Two folders that hold a book's patterns and nothing else."""
    for name in ("one", "two"):
        shutil.copytree(book / "patterns", tmp_path / name / "patterns")
    return tmp_path / "one", tmp_path / "two"


def all_files(folder):
    """Every file of a workspace but the cache, whose entries may differ in time of making only."""
    found = (path for path in folder.rglob("*") if path.is_file())
    names = {path.relative_to(folder): path for path in found}
    return {str(name): path.read_bytes() for name, path in names.items() if "cache" not in str(name)}


@pytest.mark.parametrize(("book", "words"), WORK, ids=[" ".join(words) for _, words in WORK])
def test_the_wheel_does_what_the_checkout_does(book, words, installed, tmp_path):
    with_checkout, with_wheel = two_books(book, tmp_path)
    expected = run([sys.executable, "-c", "from booklet.cli import main; main(prog_name='booklet')", *words],
                   with_checkout, PYTHONPATH=str(ROOT))
    assert run([str(installed), *words], with_wheel) == expected
    assert all_files(with_wheel) == all_files(with_checkout)


def test_the_module_runs_like_the_command(installed, tmp_path):
    one, other = two_books(DEMO, tmp_path)
    python = installed.with_name("python.exe" if bootstrap.WINDOWS else "python")
    words = ["tally", "cloud-shadow", "--json"]
    said = run([str(python), "-m", "booklet", *words], one)
    assert said == run([str(installed), *words], other)
    assert json.loads(said)["pattern"] == "cloud-shadow"


def test_a_wrong_folder_is_one_clear_line_of_the_installed_command(installed, tmp_path):
    done = subprocess.run([str(installed), "lint"], cwd=tmp_path, capture_output=True, text=True)
    assert done.returncode == 2
    assert "Traceback" not in done.stderr
    assert "patterns" in done.stderr
