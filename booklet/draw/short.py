"""Path data made shorter: numbers to a hundredth of a millimetre, which no screen shows, and nothing that SVG lets one leave out."""

from __future__ import annotations

import re
from collections.abc import Sequence

_NUMBER = re.compile(r"-?\d+\.\d+")
SLIT = 0.005    # mm between two lines, which nobody sees
_LINE = re.compile(r"(-?[\d.]+) (-?[\d.]+)([hv])(-?[\d.]+)")
_COMMAND = re.compile(r"([MmLlHhVvCcQqZz])([^A-Za-z]*)")
_ANY = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")
_TAKES = {"M": 2, "L": 2, "H": 1, "V": 1, "Q": 4, "C": 6}
_SLACK = re.compile(r" (?=-)|(?<=[a-zA-Z]) ")


def short(path: str) -> str:
    """Path data, or any list of numbers."""
    return _SLACK.sub("", _NUMBER.sub(lambda match: short_number(float(match[0])), path))


def joined(path: str) -> str:
    """Path data in which straight lines that go on from, or overlap, the one before them in the same direction are one with it."""
    done: list[str] = []
    last: tuple[str, float, float, float] | None = None     # direction, fixed coordinate, start and end of the line that is still open
    for text in filter(None, path.split("M")):
        line = _LINE.fullmatch(text)
        if line is None:
            done += _line(last) + [f"M{text}"]
            last = None
            continue
        x, y, length = float(line[1]), float(line[2]), float(line[4])
        kind, fixed, start = (line[3], y, x) if line[3] == "h" else (line[3], x, y)
        if last and length > 0 and last[:2] == (kind, fixed) and last[2] <= start <= last[3] + SLIT:
            last = (kind, fixed, last[2], max(last[3], start + length))
            continue
        done += _line(last)
        last = (kind, fixed, start, start + length)
    return "".join(done + _line(last))


def _line(line: tuple[str, float, float, float] | None) -> list[str]:
    if line is None:
        return []
    kind, fixed, start, end = line
    place = f"{start:.3f} {fixed:.3f}" if kind == "h" else f"{fixed:.3f} {start:.3f}"
    return [f"M{place}{kind}{end - start:.3f}"]


def short_number(value: float) -> str:
    """A number to a hundredth, without idle zeros: 1.5, 12, -.25, 0."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    sign, digits = ("-", text[1:]) if text.startswith("-") else ("", text)
    digits = digits[1:] if digits.startswith("0.") else digits
    return digits if digits == "0" else sign + digits


def through(points: Sequence[tuple[float, float]]) -> str:
    """Path data through points, each step as it is seen from where the rounded steps before it have led."""
    x, y = (round(value, 2) for value in points[0])
    parts = [f"M{short_number(x)} {short_number(y)}"]
    for next_x, next_y in points[1:]:
        across, down = short_number(next_x - x), short_number(next_y - y)
        parts.append(f"h{across}" if down == "0" else f"v{down}" if across == "0" else f"l{across} {down}")
        x, y = x + float(across), y + float(down)
    return short("".join(parts))


def relative(path: str) -> str:
    """Path data with every step as it is seen from where the rounded steps before it have led; which needs fewer digits than where it leads."""
    true, drawn, start = (0.0, 0.0), (0.0, 0.0), ((0.0, 0.0), (0.0, 0.0))
    parts: list[str] = []
    for command, text in _COMMAND.findall(path):
        kind = command.upper()
        if kind == "Z":
            true, drawn = start
            parts.append("z")
            continue
        axes, steps = {"H": (0,), "V": (1,)}.get(kind, (0, 1)), []
        values = [float(value) for value in _ANY.findall(text)]
        for at in range(0, len(values), _TAKES[kind]):
            group = [(axes[index % len(axes)], value) for index, value in enumerate(values[at:at + _TAKES[kind]])]
            places = [(axis, value if command.isupper() else true[axis] + value) for axis, value in group]
            short_ones = [short_number(value - drawn[axis]) for axis, value in places]
            true = _moved(true, dict(places))
            drawn = _moved(drawn, {axis: drawn[axis] + float(step) for (axis, _), step in zip(places, short_ones)})
            steps += short_ones
        if kind == "M":
            start = true, drawn
        parts.append(command.lower() + " ".join(steps))
    return _SLACK.sub("", "M" + "".join(parts)[1:])


def _moved(point: tuple[float, float], to: dict[int, float]) -> tuple[float, float]:
    """A point with some of its coordinates changed."""
    return to.get(0, point[0]), to.get(1, point[1])
