"""The steps of the fringe, with the piece's own numbers: where it hangs, each kind of strand, the way from place to place."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from .events import Under
from .language import Noun, _, decimal, listed, ngettext, sentences
from .piece import LEFT, RIGHT, Piece
from .places import places
from .plan import ThreadPlan, thread_said
from .saying import Step, at_edge, from_edge, m, places_said, sentence, strands_said, unit_of
from .size import hanging_length
from .strand import LOOP, STRAIGHT, TWIST, Strand
from .strands import Journey, journeys


def fringe_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the fringe in working order; None for those that this piece does not need."""
    if not piece.strands:
        return []
    made = [_start(piece, plan), _straight(piece), twigs_step(piece), _loop(piece), _twist(piece), charm_step(piece), _way(piece)]
    if is_plain(piece):
        return made
    number = _row(piece)
    return with_end(made, {
        "bridges": _("After the last strand the thread exits below row {row}.", row=number),
        "edge": _("After the last strand the thread exits the top of that stitch.")}.get(
            piece.hang, _("After the last strand the thread exits the top of row {row}.", row=number)))


def with_end(made: list[Step | None], end: str) -> list[Step | None]:
    """The steps, the last of which says where the thread is after the last strand."""
    last = next(index for index in reversed(range(len(made))) if made[index])
    return [*made[:last], Step(made[last].id, made[last].title, sentences(made[last].text, end)), *made[last + 1:]]


def is_plain(piece: Piece) -> bool:
    """Whether a straight strand without twigs or charms hangs under every stitch of row 1."""
    return (piece.hang == "base" and len(piece.strands) == len(piece.base.stitches)
            and all(strand.kind == STRAIGHT and not strand.hung and not strand.turned for strand in piece.strands))


def _side(piece: Piece) -> str:
    return LEFT if piece.along == RIGHT else RIGHT


def _row(piece: Piece) -> int:
    return places(piece)[0].row.number


def _exits(piece: Piece) -> str:
    """Where the thread is when a strand is done."""
    if piece.hang == "bridges":
        return _("The thread exits below row {row}.", row=_row(piece))
    if piece.hang == "edge":
        return _("The thread exits the top of that stitch.")
    return _("The thread exits the top of row {row}.", row=_row(piece))


def _start(piece: Piece, plan: ThreadPlan) -> Step:
    unit, side, first = unit_of(piece), _side(piece), journeys(piece)[0]
    number, row, bead = first.strand.span(piece.along)[0], first.start.row, first.way[-1].places[0]
    which = {"unit": unit, "number": bead.index - row.before + 1, "row": row.name}
    if piece.hang == "edge":
        goal = _("the {unit} of place {place}, {unit} {number} of row {row}, counted from the left", place=number, **which)
    elif number != (1 if piece.along == RIGHT else len(places(piece))):
        goal = _("{unit} {number} of row {row}, counted from the left", **which)
    else:
        goal = _("the first {unit} of row {row} {edge}", unit=unit, row=_row(piece), edge=at_edge(side))
    anchor = {"units": unit_of(piece, 2), "goal": goal}
    begin = _("Anchor it in the body round two neighbouring {units} twice and pass down through {goal} and under the thread bridge of place {place}.",
              place=number, **anchor) if first.start.bridge else _("Anchor it in the body round two neighbouring {units} twice and pass down through {goal}.", **anchor)
    return Step("fringe-start", _("Starting the fringe"), sentences(
        where_said(piece), thread_taken(plan), begin,
        _("The thread exits under row {row}, above strand {strand}.", row=row.name, strand=first.strand.number)))


def thread_taken(plan: ThreadPlan) -> str:
    """The thread to take, with advice where it is of nylon, or where nothing is known of it."""
    known, taken = plan.kind("fringe"), {"length": m(plan.length), "thread": thread_said(plan.fringe)}
    stretch = known is None or not known.material or "nylon" in known.material
    return _("Thread {length} of {thread}; stretch nylon before you use it.", **taken) if stretch else _("Thread {length} of {thread}.", **taken)


def where_said(piece: Piece) -> str:
    """Which places there are; nothing where they need no words."""
    hanging, unit, units = places(piece), unit_of(piece), unit_of(piece, 2)
    count, row = len(hanging), _row(piece)
    text = ""
    if piece.hang == "lowest" and piece.lower:
        text = _("The fringe hangs from row {row}, one place under each {unit}.", row=row, unit=unit)
    elif piece.hang == "edge":
        text = ngettext("The fringe hangs along the lower edge. Its {count} places are the {units} whose underside shows, numbered from the left, whichever row they are in.",
                        "The fringe hangs along the lower edge. Its {count} places are the {units} whose underside shows, numbered from the left, whichever row they are in.",
                        count, units=units)
    elif piece.hang == "bridges":
        text = ngettext("The fringe hangs on the thread bridges under row {row}: {count} places, one between each two {units}.",
                        "The fringe hangs on the thread bridges under row {row}: {count} places, one between each two {units}.", count, row=row, units=units)
    taken = {strand.number + step for strand in piece.strands for step in (0, strand.to)}
    empty = [number for number in range(1, count + 1) if number not in taken]
    if not empty:
        return text
    counted = "" if text else _("Places are numbered from the left, one under each {unit} of row {row}.", unit=unit, row=row)
    return sentences(text, counted, ngettext("{places} stays empty.", "{places} stay empty.", len(empty), places=sentence(places_said(empty))))


def _straight(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.kind == STRAIGHT]
    if not strands:
        return None
    unit, edge = unit_of(piece), from_edge(_side(piece))
    pull = sentences(_("Pull until no thread shows and the strand still swings."), longest_said(piece, strands))
    if is_plain(piece):
        return Step("fringe", _("Each strand"), sentences(
            ngettext("Work {count} strands, one under each {unit} of row 1, {edge}.", "Work {count} strands, one under each {unit} of row 1, {edge}.",
                     len(strands), unit=unit, edge=edge),
            _("Pick up the beads of the strand from the top down, then its end beads. Skip the end beads and pass back up through the rest of the strand, "
              "up through the {unit} above it and down through the next {unit}.", unit=unit),
            pull, _("After the last strand the thread exits the top of row 1.")))
    take = _("Pick up the beads of the strand from the top down, then its end beads. Skip the end beads and pass back up through the rest of the strand, "
             "then pass under the thread bridge once more.") if piece.hang == "bridges" else _(
                 "Pick up the beads of the strand from the top down, then its end beads. Skip the end beads and pass back up through the rest of the strand "
                 "and up through the {unit} above it.", unit=unit)
    return Step("fringe", _("Each strand"), sentences(
        _("Work {strands} like this, {edge}.", strands=strands_said([strand.number for strand in strands]), edge=edge), take, pull, _exits(piece)))


def longest_said(piece: Piece, strands: Sequence[Strand]) -> str:
    longest = max(strands, key=lambda strand: hanging_length(piece, strand))
    return _("The longest, strand {number}, measures {length} mm.", number=longest.number, length=decimal(hanging_length(piece, longest), 0))


def twigs_step(piece: Piece) -> Step | None:
    strands = [strand.number for strand in piece.strands if strand.twigs]
    if not strands:
        return None
    return Step("fringe-twigs", _("Twigs"), sentences(
        ngettext("{strands} bears twigs: in the words a twig stands in brackets.", "{strands} bear twigs: in the words a twig stands in brackets.",
                 len(strands), strands=sentence(strands_said(strands))),
        _("Where you come to one, pick up its beads and its end beads, skip the end beads and pass back through the rest "
          "of the twig only. Push the twig up against the strand, so that no thread shows, and go on with the beads after it. On the way back "
          "up pass through the beads of the strand and by the twigs. After each twig the thread exits the strand where the twig begins.")))


def loops_said(piece: Piece) -> str | None:
    """Which strands are loops, and how they are picked up; None where there are none."""
    strands = [strand.number for strand in piece.strands if strand.kind == LOOP]
    return sentences(
        ngettext("{strands} is a loop.", "{strands} are loops.", len(strands), strands=sentence(strands_said(strands))),
        _("Pick up all the beads; there are no end beads, and the needle does not pass back through them.")) if strands else None


def _loop(piece: Piece) -> Step | None:
    begin = loops_said(piece)
    if not begin:
        return None
    go = _("Go to the second place that the words name and pass under the thread bridge there.") if piece.hang == "bridges" else \
        _("Go to the second place that the words name and pass up through the {unit} there.", unit=unit_of(piece))
    return Step("fringe-loop", _("Loops"), sentences(begin, go, _("Pull until the loop hangs round and no thread shows."), _exits(piece)))


def twists_said(piece: Piece) -> str | None:
    """Which strands are twisted pairs, and how they are picked up; None where there are none."""
    strands = [strand for strand in piece.strands if strand.kind == TWIST]
    if not strands:
        return None
    numbers = [strand.number for strand in strands]
    take = _("Pick up the beads of the first line, the end beads and then the beads after \"up\".") if any(strand.end for strand in strands) else \
        _("Pick up the beads of the first line and then the beads after \"up\".")
    return sentences(
        ngettext("{strands} is a twisted pair.", "{strands} are twisted pairs.", len(strands), strands=sentence(strands_said(numbers))), take,
        _("Hold the thread close to the last bead and roll it between two fingers, "
          "always the same way, until the lines wind round each other when you let them hang."))


def _twist(piece: Piece) -> Step | None:
    begin = twists_said(piece)
    if not begin:
        return None
    back = _("Without letting go, pass under the thread bridge once more.") if piece.hang == "bridges" else \
        _("Without letting go, pass up through the {unit} above it.", unit=unit_of(piece))
    return Step("fringe-twist", _("Twisted pairs"), sentences(begin, back, _exits(piece)))


def charm_step(piece: Piece) -> Step | None:
    counts = Counter(name for strand in piece.strands for name in strand.charms)
    if not counts:
        return None
    strands = [strand.number for strand in piece.strands if strand.charms]
    names = listed([f"{count} × {name}" for name, count in counts.items()])
    lines = [line for strand in piece.strands for line in (strand, *strand.twigs)]
    middle = any(not hasattr(thing, "beads") for line in lines for thing in line.hung)
    return Step("fringe-charm", _("Charms and rings"), sentences(
        ngettext("{strands} of each piece takes {charms}.", "{strands} of each piece take {charms}.", len(strands), strands=sentence(strands_said(strands)), charms=names),
        _("Where the words name one, pass through its ring as through a bead."),
        _("On the way back pass through it again.") if middle else "",
        _("One that is named among the end beads is skipped with them, and hangs there.") if any(line.turned for line in lines) else "",
        _("The thread exits on the other side of the ring.")))


def _way(piece: Piece) -> Step | None:
    """Ways that are alike are told together."""
    told: dict[str, list[int]] = {}
    for journey in journeys(piece)[1:]:
        told.setdefault(_told(piece, journey), []).append(journey.strand.number)
    if is_plain(piece) or not told:
        return None
    return Step("fringe-way", _("From strand to strand"), sentences(
        _("No thread may show on the face, so the needle goes through worked {units}.", units=unit_of(piece, 2)),
        *(_("To {strands} {way}.", strands=strands_said(sorted(numbers)), way=way) for way, numbers in told.items()),
        _("The thread exits downward, above the next strand.")))


def _told(piece: Piece, journey: Journey) -> str:
    if not journey.way:
        return _("pass straight on under the thread bridge of its place")
    unit, said = unit_of(piece), []
    level, at, turn = journey.here.row.level, journey.here.at, False
    for each in journey.way:
        if isinstance(each, Under):
            turn = True
            continue
        row = piece.holds(each.places[0].line, each.places[0].index)
        stitch = row.stitches[each.places[0].index - row.before]
        goal = _("the same {unit} again", unit=unit) if turn else _goal(unit, row.level - level, stitch.at - at)
        down = each.up == (row.level < 0)
        if turn:
            said.append(_("under the thread bridge beside it and down through {goal}", goal=goal) if down else
                        _("under the thread bridge beside it and up through {goal}", goal=goal))
        else:
            said.append(_("down through {goal}", goal=goal) if down else _("up through {goal}", goal=goal))
        level, at, turn = row.level, stitch.at, False
    if journey.start.bridge:
        said.append(_("under the thread bridge of its place"))
    return _("pass {ways}", ways=_(", then ").join(said))


def _goal(unit: Noun, higher: int, right: int) -> str:
    """A stitch as it is seen from another one: rows higher, and half stitches to the right."""
    if higher:
        place = _("the {unit} above", unit=unit) if higher > 0 else _("the {unit} below", unit=unit)
    elif abs(right) <= 2:
        place = _("the next {unit}", unit=unit)
    else:
        place = ngettext("the {unit} {count} further on", "the {unit} {count} further on", abs(right) // 2, unit=unit)
    if not right:
        return place
    return _("{place} to the right", place=place) if right > 0 else _("{place} to the left", place=place)
