"""Pictures as PNG files, made by the workers and kept like every other result."""

from __future__ import annotations

import asyncio
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from ..draw.png import png_bytes
from .press.cache import KEPT
from .press.workshop import HereAndNow, Workshop, pool, workers

FEW = 4   # pictures that are drawn sooner than workers are ready


@dataclass(frozen=True)
class PngOrder:
    """A picture in dots."""

    svg: str

    @property
    def labour(self) -> int:
        return len(self.svg)

    def fill(self) -> bytes:
        return png_bytes(self.svg)


def rasters(pictures: Mapping[str, str], root: Path) -> dict[str, bytes]:
    """Pictures of a workspace, which are SVG, as PNG by the same names."""
    count = workers() if len(pictures) > FEW else 1
    with Workshop(root / KEPT, (lambda: pool(count)) if count > 1 else HereAndNow, typesets=False) as shop:
        return dict(zip(pictures, asyncio.run(shop.results(map(PngOrder, pictures.values())))))
