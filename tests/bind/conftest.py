"""One small book, built once a run and read by every test of this folder."""

from types import SimpleNamespace

import pytest

from booklet.bind import book, single
from booklet.source.workspace import load
from tests.bind.copies import TINY, copy_of

@pytest.fixture(scope="session")
def tiny(tmp_path_factory):
    """The tiny book, with its PDF, its web pages and the single of its first pattern."""
    root = copy_of(TINY, tmp_path_factory.mktemp("bind") / "tiny")
    workspace = load(root)
    assert not workspace.findings
    pdf, index = book.build(workspace)
    (one,) = single.build(workspace, "morning-cloud")
    return SimpleNamespace(root=root, workspace=workspace, pdf=pdf, html=index.parent, single=one)
