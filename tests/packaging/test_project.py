"""The project file and the code agree: what is imported is declared, and every supported Python can read it."""

import ast
import sys
from pathlib import Path

import pytest
import vermin
from hatchling.metadata.core import ProjectMetadata
from hatchling.plugin.manager import PluginManager
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from booklet import bootstrap

ROOT = Path(bootstrap.ROOT)
SOURCES = sorted((ROOT / "booklet").rglob("*.py"))
FIRST_READ = ["booklet/__init__.py", "booklet/__main__.py", "booklet/bootstrap.py", "booklet/machine.py",
              "tests/__init__.py", "tests/__main__.py"]

# Where a package's name is not that of the module it brings.
MODULES = {"pillow": "PIL", "pyyaml": "yaml", "fonttools": "fontTools", "scikit-image": "skimage",
           "pytest-xdist": "xdist", "python-barcode": "barcode", "python-stdnum": "stdnum"}


def declared(extra):
    """The modules of the requirements that pyproject.toml gives for an extra ("" for every run)."""
    core = ProjectMetadata(str(ROOT), PluginManager()).core
    needs = core.optional_dependencies[extra] if extra else core.dependencies
    names = [canonicalize_name(Requirement(need).name) for need in needs]
    return {MODULES.get(name, name.replace("-", "_")) for name in names}


def imported(paths):
    """The top-level modules that these files import, ours and the standard library's left out."""
    names = set()
    for path in paths:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                names.update(alias.name.split(".")[0] for alias in node.names)
            elif isinstance(node, ast.ImportFrom) and not node.level:
                names.add(node.module.split(".")[0])
    return names - set(sys.stdlib_module_names) - {"booklet", "tests"}


def test_what_the_package_imports_is_declared():
    assert imported(SOURCES) <= declared("") | declared("cluster")


def test_what_the_tests_import_is_declared():
    needed = imported(sorted((ROOT / "tests").rglob("*.py")))
    assert needed <= declared("") | declared("test")


@pytest.mark.parametrize("extra", ["", "test"])
def test_setting_up_tries_every_declared_module(extra):
    tried = set(bootstrap.PARTS[extra].split())
    assert tried == declared(extra) - {"weasyprint"}, "weasyprint is tried apart, for the sake of Pango"


@pytest.mark.parametrize("name", FIRST_READ)
def test_an_old_python_can_read_the_way_in(name):
    assert ast.parse((ROOT / name).read_text(encoding="utf-8"), feature_version=(3, 7)).body


def test_the_way_in_uses_the_standard_library_alone():
    assert imported([ROOT / name for name in FIRST_READ]) == {"pytest"}, "pytest is imported once inside"


def test_the_least_python_is_the_one_declared():
    assert 'requires-python = ">=%d.%d"' % bootstrap.LEAST_PYTHON in (ROOT / "pyproject.toml").read_text("utf-8")


def test_the_least_python_has_all_that_the_code_uses():
    config = vermin.Config()
    config.add_exclusion("file")   # our fields of that name are taken for a built-in function of Python 2
    for path in SOURCES:
        _, least = vermin.visit(path.read_text(encoding="utf-8"), config).minimum_versions()
        assert least <= bootstrap.LEAST_PYTHON, f"{path.name} needs Python {least}"
