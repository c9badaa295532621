"""How numbers are written in a picture: always the same digits for the same value."""

from __future__ import annotations

from functools import lru_cache


@lru_cache(maxsize=1 << 14)   # a picture has few different lengths: three of four are known
def num(value: float) -> str:
    """A length in mm to a thousandth, without idle zeros: 1.5, 12, -0.25, 0."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
