"""Which files `booklet lint` is asked to check, and reading them."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterable
from contextlib import AbstractContextManager
from pathlib import Path

from ..errors import WrongUse
from ..findings import Finding
from ..lint.run import Checked, checked, weighed
from ..source.workspace import OTHER_FILES, Workspace, load, load_text, pattern_files
from .reading import checked_folder, unknown_pattern

Asked = dict[Path, "set[Path] | None"]   # by workspace: the files to check, None for all of them
Place = Callable[[Path], AbstractContextManager[None]]   # where the pages of a workspace are set


def asked_for(folder: Path, paths: Iterable[str]) -> Asked:
    """The workspaces to check, with the files to check in each."""
    asked: Asked = {}
    for root, file in (_place(folder, path) for path in paths) if paths else [(checked_folder(folder), None)]:
        if file is None:
            asked[root] = None
        elif asked.setdefault(root, set()) is not None:
            asked[root].add(file)
    return asked


def _place(folder: Path, path: str) -> tuple[Path, Path | None]:
    """The workspace that a path means, and the file in it (None for all)."""
    by_name = folder / "patterns" / f"{path}.yaml"
    if by_name in pattern_files(folder):
        return folder, by_name
    place = Path(os.path.normpath(folder / path))
    if place.is_dir():
        return checked_folder(place.parent if place.name == "patterns" else place), None
    root = place.parent.parent
    if place.parent.name == "patterns" and (place.name in OTHER_FILES and place.exists() or place in pattern_files(root)):
        return root, place
    if place.exists():
        raise WrongUse(f"{path} is neither a pattern file nor a book file", "pattern files are patterns/NAME.yaml")
    raise unknown_pattern(path, (file.stem for file in pattern_files(folder)))


def patterns_of(root: Path, files: set[Path] | None) -> list[Path]:
    """The pattern files among those that are asked for."""
    return pattern_files(root) if files is None else sorted(file for file in files if file.name not in OTHER_FILES)


def check_files(folder: Path, asked: Asked, fit: Place | None = None) -> Checked:
    """What is found in all that is asked for; with `fit`, which gives a place to set the pages of a workspace, also on the pages of every pattern that has no errors."""
    runs = []
    for root, files in asked.items():
        workspace = load(root, None if files is None else patterns_of(root, files))
        with_book = files is None or any(file.name in OTHER_FILES for file in files)
        run = checked(workspace, with_book)
        runs.append(_named(_fitted(run, workspace, fit) if fit else run, folder, root))
    return Checked(tuple(sorted(finding for run in runs for finding in run.findings)), tuple(sorted(one for run in runs for one in run.allowed)))


def _fitted(run: Checked, workspace: Workspace, fit: Place) -> Checked:
    """The run with what is found on the pages, as the book weighs it and each pattern allows it."""
    from ..bind.single import fit_findings

    broken = {finding.mark.file for finding in run.findings if finding.is_error}
    with fit(workspace.root):
        found = fit_findings(workspace, [pattern for pattern in workspace.patterns.values() if pattern.file not in broken])
    return weighed(run, found, workspace)


def check_input(folder: Path, name: str) -> Checked:
    """What is found in the pattern on standard input, which findings call `name`; the book file of the folder holds for it."""
    return checked(load_text(folder, sys.stdin.buffer.read(), name), with_book=False)


def _named(run: Checked, folder: Path, root: Path) -> Checked:
    """The run with its files named from `folder`."""
    if root == folder:
        return run

    def named(finding: Finding) -> Finding:
        name = os.path.relpath(root / finding.mark.file, folder).replace(os.sep, "/")
        return finding._replace(mark=finding.mark._replace(file=name))

    return Checked(tuple(map(named, run.findings)), tuple((named(finding), reason) for finding, reason in run.allowed))
