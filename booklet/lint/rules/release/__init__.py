"""Rules that hold a pattern against the record of what was published."""
