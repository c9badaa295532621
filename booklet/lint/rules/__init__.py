"""The rules: one module each, named for the fault it finds, `ragged_set.py` for `ragged-set`.

A rule module has a docstring (what it checks; why a beader would care; `Bad:` and `Good:` YAML, both run
as tests and printed by `booklet lint --explain`), and four names:

ID        the module's name in kebab-case; its meaning never changes
SEVERITY  of its findings
NEEDS     what must be there for it to run, see registry.py; a rule that needs what few runs have stands in a folder of that name,
          and one on what few patterns have in extras/
check     check(subject) yields findings; see subject.py
"""
