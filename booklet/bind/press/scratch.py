"""Files without a name, for what is too large to be held."""

from __future__ import annotations

import tempfile
import weakref


class Scratch:
    """A file without a name, which goes away with the last who knows it."""

    def __init__(self) -> None:
        self.file = tempfile.TemporaryFile()
        weakref.finalize(self, self.file.close)

    def read(self) -> bytes:
        """All that is in it."""
        self.file.seek(0)
        return self.file.read()
