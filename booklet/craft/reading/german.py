"""The grammar of printed words in German: what a line of each kind looks like. The readings give the parts their meaning.

Expressions are compiled where a line of their kind is first read.
"""

from __future__ import annotations

# Rows of brick stitch. `how` of BRICK_TEXT is looked up in STARTS, an end in ENDS.
BRICK_ROW = r"Reihe (\d+)([a-z]*) ([←→]) (\d+) (Stich|Stiche|Set|Sets)( unterhalb)?: (.+)"
BRICK_TRAVEL = r"(\d+) (?:Stiche|Sets) nach innen gehen; "
BRICK_FROM = r"(?:weiter zu|neuer Faden in) Reihe (\d+)([a-z]*), (?:Stich|Set) (\d+) von links; "
BRICK_TEXT = (
    r"(?P<how>Leiter|Anfang innen|Anfang außen|ein Stich außen|ein Set außen|ein Stich|ein Set) (?P<first>[^;]+)"
    r"(?:; Leiter nach außen (?P<before>[^;]+))?(?:; dann (?P<more>[^;]+))?"
    r"(?:; Ende (?:(?P<end>innen|außen)|(?P<short>\d+) Brücken? vor dem Rand))?(?:; Leiter nach außen (?P<after>[^;]+))?")
STARTS = {"Leiter": "ladder", "Anfang innen": "in", "Anfang außen": "out",
          "ein Stich außen": "one out", "ein Set außen": "one out", "ein Stich": "one", "ein Set": "one"}
ENDS = {"innen": "in", "außen": "out"}

# Flat peyote: the first line, then the rows.
PEYOTE_FIRST = r"Reihen 1 und 2 ([←→]) (\d+) (?:Stiche|Sets): auffädeln (.+)"
PEYOTE_ROW = r"Reihe (\d+) ([←→]) (\d+) (?:Stich|Stiche|Set|Sets): (.+?)(; Randwende)?"

# Square stitch and loom work.
GRID_ROW = r"Reihe (\d+) ([←→]) (\d+) (?:Perle|Perlen|Stich|Stiche): (?:auffädeln |Anfang (\d+) (innen|außen); )?(.+?)(?:; Ende (\d+) (innen|außen))?"

# Strands.
STRAND = r"Strang (\d+), (\d+) Perlen?(?:, (?:Schlaufe von Platz (\d+) zu (\d+)|(gedrehtes Paar)))?: (.*)"
CHARM = r"Anhänger ([^,;\[\]]+)"
TWIG, END, UP = "Zweig [", "Ende ", "aufwärts "
