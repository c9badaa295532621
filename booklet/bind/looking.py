"""Looking at set pages part by part, in the workers, so that a part that has not changed is not looked at again."""

from __future__ import annotations

import io
import json
import re
from dataclasses import dataclass, field
from functools import lru_cache, partial

from .geometry import Sheet
from .pdf import workshop
from .press.binding import Bound
from .press.fragment import MARK, Fragment, unpacked
from .press.join import FIRST_KEY, FIRST_OBJECT, Join
from .press.link import linked
from .press.metadata import About
from .press.orders import UNKEYED, Held
from .press.workshop import Later
from .set_pages import Fault, Seen, looked_at, together


_REFERENCE = re.compile(MARK + rb"o(\d+);")
_LINKS = re.compile(rb"/Annots \[[^\]]*\]")


@dataclass(frozen=True)
class LookOrder:
    """What the pages of one fragment show."""

    part: bytes | Held       # packed
    sheet: Sheet
    fonts: bytes = field(metadata=UNKEYED)   # of the whole book: they hold all signs of the part, whatever else

    def fill(self) -> bytes:
        part = unpacked(self.part)
        lacking = any(0 in face.widths for face in part.faces.values())   # the typesetter gives the empty box a width where it prints one
        made = io.BytesIO()
        joined = Join(made)
        joined.add(linked(_pages_of(part), FIRST_OBJECT, FIRST_KEY), [b""] * len(part.pages))
        joined.finish(_fonts(self.fonts), About(""))
        return json.dumps(looked_at(made.getvalue(), self.sheet, lacking)).encode()


@lru_cache(maxsize=1)
def _fonts(content: bytes) -> Fragment:
    return unpacked(content)


def _pages_of(part: Fragment) -> Fragment:
    """The pages of a part and what is painted on them, without tags, links and places, of which there are ten times as many objects."""
    numbers = {page["object"]: at for at, page in enumerate(part.pages)}
    made, todo = Fragment(pages=[{**page, "object": at} for at, page in enumerate(part.pages)]), list(numbers)

    def renumbered(match: re.Match) -> bytes:
        number = int(match[1])
        if number not in numbers:
            numbers[number] = len(numbers)
            todo.append(number)
        return MARK + b"o%d;" % numbers[number]

    for number in todo:   # which grows
        if number in part.streams:
            made.streams[len(made.objects)] = part.streams[number]
        made.objects.append(_REFERENCE.sub(renumbered, _LINKS.sub(b"", part.objects[number])))
    return made


async def seen_in(bound: Bound, sheet: Sheet) -> Seen:
    """What the pages of a bound document show, page numbers apart."""
    orders = [Later(partial(LookOrder, part, sheet, bound.fonts)) for part in bound.parts]
    return together(seen for _, seen in await workshop().each(orders, _seen))


def _seen(content: bytes) -> Seen:
    pages, faults, small, strange = json.loads(content)
    return Seen(pages, [Fault(*fault) for fault in faults], [tuple(one) for one in small], [tuple(one) for one in strange])
