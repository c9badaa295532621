"""How many slips of the pen lint finds: errors seeded into the demo book the way people make them.

    python -m tests.bench.slips            2,400 slips, about four minutes
    python -m tests.bench.slips --each 20  a quick look
    python -m tests.bench.slips --missed   also the slips that were not found

Each slip is one text of one pattern file, linted alone as `booklet lint FILE` does. "visible" are the slips that something else in the file or in the
record of releases contradicts (contradicted.py); the others leave a consistent pattern, which no tool can know to be another one than was meant.
The same slips are also made in a book that was published, where the record contradicts every change of what is stitched.
"""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path
from random import Random
from typing import NamedTuple

from booklet.findings import Finding
from booklet.lint.run import checked, lint
from booklet.source.releases import Releases, entry_of, read_releases
from booklet.source.workspace import Workspace, load
from tests.bench.contradicted import reasons
from tests.bench.drawn import Drawn
from tests.bench.slip_kinds import KINDS, PUBLISHED
from tests.bench.told import said_right, sentences

ROOT = Path(__file__).parents[2]
TRIES = 200   # to draw one slip of a kind


class Seeded(NamedTuple):
    """One slip, what contradicts it, and what lint says."""

    slug: str
    text: str
    why: list[str]
    found: tuple[Finding, ...]


def main() -> None:
    """Seed, lint, and print the tables."""
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--each", type=int, default=130, help="slips of each kind")
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--missed", action="store_true", help="show what was not found")
    asked.add_argument("--only", default="", help="kinds with this in their name")
    options = asked.parse_args()
    workspace = load(ROOT)
    print(f"findings in the clean demo book: {len(lint(workspace))}")
    drawn = {slug: Drawn((ROOT / pattern.file).read_text("utf-8"), pattern, workspace.book) for slug, pattern in workspace.patterns.items()}
    print("true sentences written into the notes, and findings in them: {} and {}".format(*_true_sentences(workspace, drawn, options.seed)))
    record = "".join(entry_of(pattern) for pattern in workspace.patterns.values())
    releases, wrong = read_releases(record, "patterns/releases.yaml")
    assert not wrong, wrong
    kinds = {name: kind for name, kind in KINDS.items() if options.only in name}
    _table("a book not yet published", workspace, drawn, kinds, None, options)
    _table("the same slips in a published book", workspace, drawn, kinds | PUBLISHED, releases, options)


def _true_sentences(workspace: Workspace, drawn: dict[str, Drawn], seed: int) -> tuple[int, int]:
    random, made, findings = Random(seed), 0, 0
    for one in drawn.values():
        for told in sentences(one.pattern, random):
            found = _lint(workspace, one, said_right(one, random, told), None)
            made, findings = made + 1, findings + len(found)
            for finding in found:
                print(f"  {finding.one_line()}")
    return made, findings


def _table(title: str, workspace: Workspace, drawn: dict[str, Drawn], kinds: dict[str, Callable], releases: Releases | None, options: argparse.Namespace) -> None:
    print(f"\n{title}\n{'':32}{'seeded':>8}{'visible':>9}{'found':>7}{'':>9}   {'others':>6}{'found all the same':>20}")
    total: Counter[str] = Counter()
    for name, kind in kinds.items():
        count: Counter[str] = Counter()
        for slip in _seeded(workspace, drawn, kind, releases, Random(f"{options.seed} {name}"), options.each):
            part = "visible" if slip.why else "other"
            count.update({"seeded": 1, part: 1, f"{part} found": bool(slip.found)})
            if options.missed and slip.why and not slip.found:
                _show(slip, drawn[slip.slug])
        total += count
        _line(name, count)
    _line("all", total)


def _line(name: str, count: Counter[str]) -> None:
    share = f"{count['visible found'] / count['visible']:.1%}" if count["visible"] else "-"
    print(f"{name:32}{count['seeded']:>8}{count['visible']:>9}{count['visible found']:>7}{share:>9}   {count['other']:>6}{count['other found']:>20}", flush=True)


def _seeded(workspace: Workspace, drawn: dict[str, Drawn], kind: Callable, releases: Releases | None, random: Random, each: int) -> Iterator[Seeded]:
    slugs = list(drawn)
    for _ in range(each):
        for _ in range(TRIES):
            slug = random.choice(slugs)
            text = kind(drawn[slug], random)
            if _says_something_else(drawn[slug], text):
                yield Seeded(slug, text, reasons(drawn[slug], text, releases), _lint(workspace, drawn[slug], text, releases))
                break


def _says_something_else(drawn: Drawn, text: str) -> bool:
    """Whether what is stitched, counted or read has changed."""
    after = drawn.with_text(text)
    if after is None or after.pattern.piece is None:
        return True
    before = drawn.pattern
    return any(getattr(before, name) != getattr(after.pattern, name) for name in ("piece", "legend", "notes", "counted", "version"))


def _lint(workspace: Workspace, drawn: Drawn, text: str, releases: Releases | None) -> tuple[Finding, ...]:
    """What `booklet lint FILE` says of a text, but for what it says of the record's missing copies."""
    from booklet.source.resolve import read_pattern

    pattern, findings = read_pattern(text, drawn.pattern.file, drawn.pattern.slug, drawn.book)
    one = Workspace(workspace.root, drawn.book, {pattern.slug: pattern} if pattern else {}, workspace.slugs, tuple(findings), releases)
    return tuple(finding for finding in checked(one, with_book=False).findings if finding.rule != "released-copy-missing")


def _show(slip: Seeded, drawn: Drawn) -> None:
    changed = [f"{number}: {old}  ->  {new}" for number, (old, new) in enumerate(zip(drawn.lines, slip.text.split("\n")), 1) if old != new]
    print(f"  {slip.slug}: {'; '.join(slip.why)}\n    " + "\n    ".join(changed[:3]))


if __name__ == "__main__":
    main()
