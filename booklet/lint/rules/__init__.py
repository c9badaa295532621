"""The rules: one module each, named for the fault it finds, `row_has_gap.py` for `row-has-gap`.

A rule module has a docstring (what it checks; why a beader would care; `Bad:` and `Good:` YAML, both run
as tests and printed by `booklet lint --explain`), and four names:

ID        the module's name in kebab-case; its meaning never changes
SEVERITY  of its findings
NEEDS     what must be there for it to run: a "pattern", its "piece" (the chart reads as rows and
          strands), its "path" (and the piece can be worked), or the "book"
check     check(subject) yields findings; see subject.py
"""
