"""Reading: from the files of a workspace to patterns and a book, with the place of everything.

In: YAML files. Out: `Workspace` with frozen patterns and findings; nothing here raises on bad input.
"""
