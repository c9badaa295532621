"""The tests, laid out as the package is. `python3 -m tests` runs them all on a fresh checkout."""
