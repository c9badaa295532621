"""Rules on the photo of a pattern."""
