"""Colour arithmetic: luminance, contrast, greys and mixtures of "#rrggbb" colours."""

from __future__ import annotations

from functools import lru_cache

BLACK, WHITE = "#000000", "#ffffff"


def channels(colour: str) -> tuple[float, float, float]:
    """Red, green, blue as 0..1."""
    return tuple(int(colour[i:i + 2], 16) / 255 for i in (1, 3, 5))


def from_channels(red: float, green: float, blue: float) -> str:
    """0..1 channels back to "#rrggbb"; values outside are clipped."""
    return "#" + "".join(f"{round(255 * min(1.0, max(0.0, c))):02x}" for c in (red, green, blue))


def decode(value: float) -> float:
    """An sRGB channel to linear light (IEC 61966-2-1)."""
    return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4


def encode(value: float) -> float:
    """Linear light to an sRGB channel."""
    return 12.92 * value if value <= 0.0031308 else 1.055 * value ** (1 / 2.4) - 0.055


@lru_cache(maxsize=1024)
def luminance(colour: str) -> float:
    """Relative luminance, 0 black to 1 white, as WCAG 2.2 defines it."""
    red, green, blue = map(decode, channels(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21, as WCAG 2.2 defines it."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def ink_on(colour: str) -> str:
    """Black or white, whichever stands out more; it is never below 4.5:1."""
    return BLACK if contrast(BLACK, colour) >= contrast(WHITE, colour) else WHITE


def grey_of(colour: str) -> str:
    """The grey of equal luminance: what a black and white print shows."""
    value = encode(luminance(colour))
    return from_channels(value, value, value)


@lru_cache(maxsize=1024)
def mix(colour: str, other: str, share: float) -> str:
    """`colour` with `share` (0..1) of `other` in it."""
    pairs = zip(channels(colour), channels(other))
    return from_channels(*(a + (b - a) * share for a, b in pairs))
