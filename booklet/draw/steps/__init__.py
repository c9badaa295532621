"""Step pictures: how the needle goes, drawn from this very piece's path.

In: a piece and a scene of it (craft.scenes): some events of its path, and all that came before them. Out: SVG text in true
millimetres that can be read at 40 mm width and in greyscale: beads placed so far are pale and lightly outlined, new ones coloured
and firmly outlined; the thread is a bold line with a needle at its head, dashed in the holes of beads, and every action has its number.

Beads stand further apart than in the piece (`opened`), so that thread bridges and passes can be seen; `nodes` says where the
thread goes in and out, `lines` how it runs between, `scene` puts a picture together and `said` tells it in words.
"""

from .moving import Moving
from .scene import Stage, scene_svg

__all__ = ["Moving", "Stage", "scene_svg"]
