"""One small book, built once a run and read by every test of this folder."""

import os
from types import SimpleNamespace

import pytest

from booklet.bind import book, single
from booklet.bind.pdf import working_in
from booklet.bind.press.workshop import HereAndNow, Workshop
from booklet.source.workspace import load
from tests.bind.copies import TINY, copy_of

@pytest.fixture(scope="session")
def tiny(tmp_path_factory):
    """The tiny book, with its PDF, its web pages and the single of its first pattern."""
    root = copy_of(TINY, tmp_path_factory.mktemp("bind") / "tiny")
    workspace = load(root)
    assert not workspace.findings
    with working_in(Workshop(_kept(tmp_path_factory), HereAndNow)):
        pdf, index = book.build(workspace)
        (one,) = single.build(workspace, "morning-cloud")
    return SimpleNamespace(root=root, workspace=workspace, pdf=pdf, html=index.parent, single=one)


def _kept(tmp_path_factory):
    """A folder of this run that all its processes share, so that what one of them has set the others need not set again."""
    own = tmp_path_factory.getbasetemp()
    return (own.parent if "PYTEST_XDIST_WORKER" in os.environ else own) / "kept"
