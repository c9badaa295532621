"""Looking at set pages part by part, in the workers, so that a part that has not changed is not looked at again."""

from __future__ import annotations

import io
import json
from dataclasses import dataclass, field
from functools import partial

from .geometry import Sheet
from .pdf import workshop
from .press.binding import Bound
from .press.fragment import unpacked
from .press.join import FIRST_KEY, FIRST_OBJECT, Join
from .press.link import linked
from .press.metadata import About
from .press.orders import UNKEYED, Held
from .press.workshop import Later
from .set_pages import Fault, Seen, looked_at, together


@dataclass(frozen=True)
class LookOrder:
    """What the pages of one fragment show."""

    part: bytes | Held       # packed
    sheet: Sheet
    fonts: bytes = field(metadata=UNKEYED)   # of the whole book: they hold all signs of the part, whatever else

    def fill(self) -> bytes:
        made = io.BytesIO()
        joined, part = Join(made), unpacked(self.part)
        joined.add(linked(part, FIRST_OBJECT, FIRST_KEY), [b""] * len(part.pages))
        joined.finish(unpacked(self.fonts), About(""))
        lacking = any(0 in face.widths for face in part.faces.values())   # the typesetter gives the empty box a width where it prints one
        return json.dumps(looked_at(made.getvalue(), self.sheet, lacking)).encode()


async def seen_in(bound: Bound, sheet: Sheet) -> Seen:
    """What the pages of a bound document show, page numbers apart."""
    orders = [Later(partial(LookOrder, part, sheet, bound.fonts)) for part in bound.parts]
    return together(seen for _, seen in await workshop().each(orders, _seen))


def _seen(content: bytes) -> Seen:
    pages, faults, small, strange = json.loads(content)
    return Seen(pages, [Fault(*fault) for fault in faults], [tuple(one) for one in small], [tuple(one) for one in strange])
