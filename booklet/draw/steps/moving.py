"""A step picture in a file of its own that can show the thread on its way: the fragment `#p3` shows the first three actions, the third in motion; `#s3` shows them at rest.

All of it is style within the file, so that it works in an `<img>` and from a disk. Browsers do not tell a picture that its reader wants no motion,
so the page asks for what it needs. Without a fragment it is the picture as printed.

A bead is filled with --b-W, where it was placed before with --p-W, which is paler: later rules in its style sheet can show it in other colours.
"""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from ..picture import Picture, Style
from ..short import relative, short_number

SLOT, LONGEST = 0.7, 2.8    # seconds for one stretch of thread, and at most for a whole action
DRAWN = ("thread", "halo")      # layers whose lines are seen to grow
AHEAD = ("number", "figure")    # layers that say what comes


class Moving(Picture):
    """Keeps apart what belongs to each action. A part is named "3.1": the second stretch of the third action; "=3": only while that is the last one shown."""

    moves = True

    def __init__(self, layers: Iterable[str] = ()) -> None:
        super().__init__(layers)
        self._part, self._found, self._fills = "", {name: {} for name in layers}, {}

    def part(self, name: str) -> None:
        self._part = name

    def fill(self, key: str, colour: str, is_pale: bool) -> str:
        name = f"--{'p' if is_pale else 'b'}-{key}"
        self._fills[name] = colour
        return f"var({name})"

    def add(self, layer: str, style: Style, path: str) -> None:
        self._found[layer].setdefault((self._part, style), []).append(path)

    def svg(self, left: float, top: float, width: float, height: float, *, alt: str, prefix: str, scale: float = 1.0) -> str:
        styles, names, painted = {}, [part for layer in self._found.values() for part, _ in layer], []
        last = max((int(name.lstrip("=").split(".")[0]) for name in names if name), default=0)
        slots = {number: max((int(name.split(".")[1]) for name in names if name.startswith(f"{number}.")), default=0) + 1 for number in range(1, last + 1)}
        for layer, found in self._found.items():
            for (part, style), paths in found.items():
                look = styles.setdefault(style, f"s{len(styles)}")
                painted += [_path(look, part, path, layer, slots) for path in (paths if layer.split("-")[0] in DRAWN else ["".join(paths)])]
        size = f'width="{short_number(width * scale)}mm" height="{short_number(height * scale)}mm"'
        box = " ".join(map(short_number, (left, top, width, height)))
        colours = ";".join(f"{name}:{colour}" for name, colour in self._fills.items())
        anchors = "".join(f'<g id="{kind}{number}"/>' for number in range(1, last + 1) for kind in "ps")
        return (f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="{box}" role="img" aria-label="{escape(alt)}"><title>{escape(alt)}</title>'
                f"<style>svg{{{colours}}}{''.join(_rule(style, name) for style, name in styles.items())}{_motion(last)}</style>{anchors}{''.join(painted)}</svg>")


def _path(look: str, part: str, path: str, layer: str, slots: dict[int, int]) -> str:
    if not part:
        return f'<path class="{look}" d="{relative(path)}"/>'
    if part.startswith("="):
        return f'<path class="{look} y k{part[1:]}" d="{relative(path)}"/>'
    number, slot = map(int, part.split("."))
    drawn = layer.split("-")[0] in DRAWN
    delay = 0.0 if layer in AHEAD else (slot if drawn else slot + 1) * min(SLOT, LONGEST / slots[number])
    late = f' style="--d:{short_number(delay)}s"' if delay else ""
    grows = ' pathLength="1"' if drawn else ""
    return f'<path class="{look} x k{number}{" t" if drawn else ""}"{late}{grows} d="{relative(path)}"/>'


def _rule(style: Style, name: str) -> str:
    parts = [f"fill:{style.fill}"]
    if style.stroke != "none":
        parts.append(f"stroke:{style.stroke};stroke-width:{short_number(style.width)}")
    if style.dash:
        parts.append(f"stroke-dasharray:{' '.join(map(short_number, style.dash))}")
    if style.round:
        parts.append("stroke-linecap:round;stroke-linejoin:round")
    return f".{name}{{{';'.join(parts)}}}"


def _motion(last: int) -> str:
    """--n is the number of actions shown, --k the one that a path belongs to, --d when it sets out."""
    numbers = range(1, last + 1)
    shown = "".join(f"#p{number}:target~path,#s{number}:target~path{{--n:{number}}}.k{number}{{--k:{number}}}" for number in numbers)
    now = ",".join(f"#p{number}:target~.k{number}" for number in numbers)
    grown = ",".join(f"#p{number}:target~.t.k{number}" for number in numbers)
    return (f"path{{--n:{last}}}.x{{opacity:calc(var(--n) - var(--k) + 1)}}.y{{opacity:calc(1 - max(var(--n) - var(--k),var(--k) - var(--n)))}}{shown}"
            "@keyframes come{from{opacity:0}}@keyframes grow{from{stroke-dashoffset:1}to{stroke-dashoffset:0}}"
            f"{now}{{animation:come .2s var(--d,0s) backwards}}{grown}{{stroke-dasharray:1;animation:grow {SLOT}s var(--d,0s) backwards}}" if last else "")
