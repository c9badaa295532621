"""Rules on the book as a whole: its file, its order, its pages, and what its patterns have in common."""
