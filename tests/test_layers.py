"""Imports run one way: each part of the package may import only what the guide for contributors allows."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "booklet"
MAY_IMPORT = {
    "craft": set(),
    "source": {"craft", "findings"},
    "draw": {"craft"},
    "lint": {"craft", "source", "draw", "findings", "errors"},
    "bind": {"craft", "source", "draw", "lint", "findings", "errors", "data"},
    "live": {"source", "lint", "bind", "findings", "errors"},
}


def imported(path):
    """The parts of our package that a module imports."""
    depth = len(path.relative_to(PACKAGE).parts)
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.level == depth:
            yield from [node.module.split(".")[0]] if node.module else [name.name for name in node.names]
        elif isinstance(node, ast.ImportFrom) and (node.module or "").startswith("booklet"):
            yield node.module.split(".")[1] if "." in node.module else node.names[0].name


@pytest.mark.parametrize("part", MAY_IMPORT)
def test_imports_run_one_way(part):
    wrong = {f"{path.name} imports {name}" for path in sorted((PACKAGE / part).rglob("*.py")) for name in imported(path)
             if name != part and name not in MAY_IMPORT[part] and name != "__version__"}
    assert wrong == set()
