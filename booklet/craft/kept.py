"""What is asked for several times of one piece, and costs some time: the last answer is kept."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import TypeVar

Answer = TypeVar("Answer")


def kept(function: Callable[..., Answer]) -> Callable[..., Answer]:
    """The function, with its answer for the piece, or whatever else was asked about last, kept. It and the answer must be frozen.

    A piece is known by being the very same one, because it holds a mapping and cannot be hashed.
    """
    last: list = [None, None]

    @wraps(function)
    def answer(piece, *others, **named) -> Answer:
        if others or named:
            return function(piece, *others, **named)
        if last[0] is not piece:
            last[:] = piece, function(piece)
        return last[1]

    return answer
