"""Files of npm packages, fetched once and kept with pytest's own cache; in a run without one, for that run."""

import shutil
import subprocess
import tarfile

import pytest


def _kept(request):
    cache = getattr(request.config, "cache", None)
    return cache.mkdir("npm") if cache else request.getfixturevalue("tmp_path_factory").getbasetemp() / "npm"


def file_of(request, package, inside):
    """A file of a package ("name@version"). The run says so where it cannot be had: programs that the tests need are installed by `python3 -m tests`."""
    folder = _kept(request) / package
    path = folder / "package" / inside
    if path.is_file():
        return path
    npm = shutil.which("npm")
    if npm is None:
        pytest.skip(f"npm is not installed: {package} checks nothing in this run")
    folder.mkdir(parents=True, exist_ok=True)
    done = subprocess.run([npm, "pack", "--silent", package], cwd=folder, capture_output=True, text=True)
    if done.returncode:
        pytest.skip(f"npm cannot fetch {package}: it checks nothing in this run")
    with tarfile.open(folder / done.stdout.split()[-1]) as packed, packed.extractfile(f"package/{inside}") as content:
        path.parent.mkdir(parents=True, exist_ok=True)
        aside = path.with_suffix(".new")
        aside.write_bytes(content.read())
        aside.replace(path)
    return path
