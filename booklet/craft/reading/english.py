"""The grammar of printed words in English: what a line of each kind looks like. The readings give the parts their meaning.

Expressions are compiled where a line of their kind is first read.
"""

from __future__ import annotations

# Rows of brick stitch. `how` of BRICK_TEXT is looked up in STARTS, an end in ENDS.
BRICK_ROW = r"Row (\d+)([a-z]*) ([←→]) (\d+) (stitch|stitches|set|sets)( below)?: (.+)"
BRICK_TRAVEL = r"travel (\d+) (?:stitches|sets) in; "
BRICK_FROM = r"(?:travel to|new thread in) row (\d+)([a-z]*), (?:stitch|set) (\d+) from the left; "
BRICK_TEXT = (
    r"(?P<how>ladder|start in|start out|one stitch out|one set out|one stitch|one set) (?P<first>[^;]+)"
    r"(?:; ladder out (?P<before>[^;]+))?(?:; then (?P<more>[^;]+))?"
    r"(?:; end (?:(?P<end>in|out)|(?P<short>\d+) bridges? short))?(?:; ladder out (?P<after>[^;]+))?")
STARTS = {"ladder": "ladder", "start in": "in", "start out": "out",
          "one stitch out": "one out", "one set out": "one out", "one stitch": "one", "one set": "one"}
ENDS = {"in": "in", "out": "out"}

# Flat peyote: the first line, then the rows.
PEYOTE_FIRST = r"Rows 1 and 2 ([←→]) (\d+) (?:stitches|sets): string (.+)"
PEYOTE_ROW = r"Row (\d+) ([←→]) (\d+) (?:stitch|stitches|set|sets): (.+?)(; edge turn)?"

# Square stitch and loom work.
GRID_ROW = r"Row (\d+) ([←→]) (\d+) (?:bead|beads|stitch|stitches): (?:string |start (\d+) (in|out); )?(.+?)(?:; end (\d+) (in|out))?"

# Strands.
STRAND = r"Strand (\d+), (\d+) beads?(?:, (?:loop from place (\d+) to (\d+)|(twisted pair)))?: (.*)"
CHARM = r"the ([^,;\[\]]+)"
TWIG, END, UP = "twig [", "end ", "up "
