"""Where the templates lie that come with booklet: beside the package in a checkout, inside it when installed."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent.parent


def own_folder() -> Path:
    """The folder of the templates that come with booklet."""
    installed = PACKAGE / "templates"
    return installed if installed.is_dir() else PACKAGE.parent / "templates"
