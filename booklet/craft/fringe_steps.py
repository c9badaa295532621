"""The steps of the fringe, with the piece's own numbers: where it hangs, each kind of strand, the way from place to place."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from .events import Under
from .piece import LEFT, RIGHT, Piece
from .places import places
from .plan import ThreadPlan
from .saying import Step, listed, m, numbers_said, unit_of
from .size import hanging_length
from .strand import LOOP, STRAIGHT, TWIST, Strand
from .strands import Journey, journeys


def fringe_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the fringe in working order; None for those that this piece does not need."""
    if not piece.strands:
        return []
    made = [_start(piece, plan), _straight(piece), twigs_step(piece), _loop(piece), _twist(piece), charm_step(piece), _way(piece)]
    if not is_plain(piece):
        last = next(index for index in reversed(range(len(made))) if made[index])
        made[last] = Step(made[last].id, made[last].title, f"{made[last].text} After the last strand the thread exits {_exit(piece)}.")
    return made


def is_plain(piece: Piece) -> bool:
    """Whether a straight strand without twigs or charms hangs under every stitch of row 1."""
    return (piece.hang == "base" and len(piece.strands) == len(piece.base.stitches)
            and all(strand.kind == STRAIGHT and not strand.hung and not strand.turned for strand in piece.strands))


def _side(piece: Piece) -> str:
    return LEFT if piece.along == RIGHT else RIGHT


def _row(piece: Piece) -> str:
    return f"row {places(piece)[0].row.number}"


def _exit(piece: Piece) -> str:
    """Where the thread is when a strand is done."""
    return f"below {_row(piece)}" if piece.hang == "bridges" else "the top of that stitch" if piece.hang == "edge" else f"the top of {_row(piece)}"


def _start(piece: Piece, plan: ThreadPlan) -> Step:
    unit, side, first = unit_of(piece), _side(piece), journeys(piece)[0]
    number = first.strand.span(piece.along)[0]
    which = f"the first {unit} of {_row(piece)} at the {side} edge"
    if piece.hang == "edge":
        which = f"the {unit} of place {number}, {_stitch(piece, first)}"
    elif number != (1 if piece.along == RIGHT else len(places(piece))):
        which = f"{_stitch(piece, first)}"
    under = f" and under the thread bridge of place {number}" if first.start.bridge else ""
    out = f"under row {first.start.row.name}, above strand {first.strand.number}"
    return Step("fringe-start", "Starting the fringe",
                f"{where_said(piece)}Thread {m(plan.length)} of {plan.fringe}{stretch_said(plan)}. Anchor it in the body round two neighbouring "
                f"{unit_of(piece, 2)} twice and pass down through {which}{under}. The thread exits {out}.")


def stretch_said(plan: ThreadPlan) -> str:
    """Advice for a thread that is of nylon, or of which nothing is known."""
    known = plan.kind("fringe")
    return "; stretch nylon before you use it" if known is None or not known.material or "nylon" in known.material else ""


def _stitch(piece: Piece, first: Journey) -> str:
    row, bead = first.start.row, first.way[-1].places[0]
    return f"{unit_of(piece)} {bead.index - row.before + 1} of row {row.name}, counted from the left"


def where_said(piece: Piece) -> str:
    """Which places there are; nothing where they need no words."""
    hanging, unit = places(piece), unit_of(piece)
    count = len(hanging)
    text = {
        "base": "",
        "lowest": f"The fringe hangs from {_row(piece)}, one place under each {unit}. " if piece.lower else "",
        "edge": f"The fringe hangs along the lower edge. Its {count} places are the {unit_of(piece, 2)} whose underside shows, "
                f"numbered from the left, whichever row they are in. ",
        "bridges": f"The fringe hangs on the thread bridges under {_row(piece)}: {count} places, one between each two {unit_of(piece, 2)}. ",
    }[piece.hang]
    taken = {strand.number + step for strand in piece.strands for step in (0, strand.to)}
    empty = [number for number in range(1, count + 1) if number not in taken]
    if not empty:
        return text
    counted = "" if text else f"Places are numbered from the left, one under each {unit} of {_row(piece)}. "
    return f"{text}{counted}{numbers_said('Place', empty)} stay{'s' if len(empty) == 1 else ''} empty. "


def _back_up(piece: Piece) -> str:
    """How the needle gets into the body again."""
    return "pass under the thread bridge once more" if piece.hang == "bridges" else f"up through the {unit_of(piece)} above it"


def _straight(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.kind == STRAIGHT]
    if not strands:
        return None
    unit, side = unit_of(piece), _side(piece)
    take = ("Pick up the beads of the strand from the top down, then its end beads. "
            "Skip the end beads and pass back up through the rest of the strand")
    pull = f"Pull until no thread shows and the strand still swings. {longest_said(piece, strands)} "
    if is_plain(piece):
        text = (f"Work {len(strands)} strands, one under each {unit} of row 1, from the {side} edge. {take}, up through the {unit} above it "
                f"and down through the next {unit}. {pull}After the last strand the thread exits the top of row 1.")
    else:
        text = (f"Work {numbers_said('strand', [strand.number for strand in strands])} like this, from the {side} edge. "
                f"{take}{', then' if piece.hang == 'bridges' else ' and'} {_back_up(piece)}. {pull}The thread exits {_exit(piece)}.")
    return Step("fringe", "Each strand", text)


def longest_said(piece: Piece, strands: Sequence[Strand]) -> str:
    longest = max(strands, key=lambda strand: hanging_length(piece, strand))
    return f"The longest, strand {longest.number}, measures {hanging_length(piece, longest):.0f} mm."


def twigs_step(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.twigs]
    if not strands:
        return None
    return Step("fringe-twigs", "Twigs",
                f"{numbers_said('Strand', [strand.number for strand in strands])} bear{'s' if len(strands) == 1 else ''} twigs: in the words a twig "
                "stands in brackets. Where you come to one, pick up its beads and its end beads, skip the end beads and pass back through the rest "
                "of the twig only. Push the twig up against the strand, so that no thread shows, and go on with the beads after it. On the way back "
                "up pass through the beads of the strand and by the twigs. After each twig the thread exits the strand where the twig begins.")


def _loop(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.kind == LOOP]
    if not strands:
        return None
    way = "pass under the thread bridge there" if piece.hang == "bridges" else f"pass up through the {unit_of(piece)} there"
    return Step("fringe-loop", "Loops",
                f"{numbers_said('Strand', [strand.number for strand in strands])} {'is a loop' if len(strands) == 1 else 'are loops'}. "
                "Pick up all the beads; there are no end beads, and the needle does not pass back through them. Go to the second place that the words name "
                f"and {way}. Pull until the loop hangs round and no thread shows. The thread exits {_exit(piece)}.")


def _twist(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.kind == TWIST]
    if not strands:
        return None
    ends = ", the end beads" if any(strand.end for strand in strands) else ""
    return Step("fringe-twist", "Twisted pairs",
                f"{numbers_said('Strand', [strand.number for strand in strands])} {'is a twisted pair' if len(strands) == 1 else 'are twisted pairs'}. "
                f"Pick up the beads of the first line{ends} and then the beads after \"up\". Hold the thread close to the last bead and roll it between two fingers, "
                "always the same way, until the lines wind round each other when you let them hang. Without letting go, "
                f"{'' if piece.hang == 'bridges' else 'pass '}{_back_up(piece)}. The thread exits {_exit(piece)}.")


def charm_step(piece: Piece) -> Step | None:
    counts = Counter(name for strand in piece.strands for name in strand.charms)
    if not counts:
        return None
    strands = [strand.number for strand in piece.strands if strand.charms]
    names = listed([f"{count} × {name}" for name, count in counts.items()])
    middle = any(not hasattr(thing, "beads") for strand in piece.strands for line in (strand, *strand.twigs) for thing in line.hung)
    again = " On the way back pass through it again." if middle else ""
    turn = any(line.turned for strand in piece.strands for line in (strand, *strand.twigs))
    skipped = " One that is named among the end beads is skipped with them, and hangs there." if turn else ""
    return Step("fringe-charm", "Charms and rings",
                f"{numbers_said('Strand', strands)} of each piece take{'s' if len(strands) == 1 else ''} {names}. Where the words name one, pass through its ring "
                f"as through a bead.{again}{skipped} The thread exits on the other side of the ring.")


def _way(piece: Piece) -> Step | None:
    """Ways that are alike are told together."""
    told: dict[str, list[int]] = {}
    for journey in journeys(piece)[1:]:
        told.setdefault(_told(piece, journey), []).append(journey.strand.number)
    if is_plain(piece) or not told:
        return None
    parts = [f"To {numbers_said('strand', sorted(numbers))} {text}." for text, numbers in told.items()]
    return Step("fringe-way", "From strand to strand",
                f"No thread may show on the face, so the needle goes through worked {unit_of(piece, 2)}. {' '.join(parts)} "
                "The thread exits downward, above the next strand.")


def _told(piece: Piece, journey: Journey) -> str:
    if not journey.way:
        return "pass straight on under the thread bridge of its place"
    unit, said = unit_of(piece), []
    level, at = journey.here.row.level, journey.here.at
    turn = ""
    for each in journey.way:
        if isinstance(each, Under):
            turn = "under the thread bridge beside it and "
            continue
        row = piece.holds(each.places[0].line, each.places[0].index)
        stitch = row.stitches[each.places[0].index - row.before]
        side = "" if stitch.at == at else f" to the {RIGHT if stitch.at > at else LEFT}"
        which = f"the {unit} {'above' if row.level > level else 'below'}" if row.level != level else \
            f"the next {unit}" if abs(stitch.at - at) <= 2 else f"the {unit} {abs(stitch.at - at) // 2} further on"
        which = f"the same {unit} again" if turn else f"{which}{side}"
        said.append(f"{turn}{'down' if each.up == (row.level < 0) else 'up'} through {which}")
        level, at, turn = row.level, stitch.at, ""
    under = ", then under the thread bridge of its place" if journey.start.bridge else ""
    return f"pass {', then '.join(said)}{under}"
