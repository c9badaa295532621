"""booklet: from a bead designer's pattern files to books and single patterns."""

__version__ = "0.1.0"
