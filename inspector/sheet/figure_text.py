"""Figures, ranges, contents and history of a sheet as plain text."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.sheet.figure_blocks import (
        ContentsBlock,
        FiguresBlock,
        Fraction,
        HistoryBlock,
        RangesBlock,
        StoryBlock,
        ViewsBlock,
    )


def story(block: StoryBlock) -> Iterator[str]:
    """How much was seen, then how much of it is right."""
    yield from (block.title, f"  {_fraction(block.seen)}", f"  {_fraction(block.right)}", block.note)


def _fraction(one: Fraction) -> str:
    return f"{one.name}: {one.figure}; {one.words}"


def contents(block: ContentsBlock) -> Iterator[str]:
    """Every title."""
    yield from (block.title, *(f"  {title}" for _, title in block.entries))


def figures(block: FiguresBlock) -> Iterator[str]:
    """The sentences, then each line with every figure under the name of its column."""
    yield from (block.title, *block.lines)
    for row in block.rows:
        inward = "    " if row.level else "  "
        told = [f"{head} {cell}".strip() for head, cell in zip(block.heads, row.cells, strict=True) if cell]
        yield f"{inward}{row.name}: {'; '.join(told)}" if told else f"{inward}{row.name}"
        yield f"{inward}  {row.said}"
    yield from (*block.after, *block.notes)


def ranges(block: RangesBlock) -> Iterator[str]:
    """The sentences, then each range or price in words."""
    yield from (block.title, *block.lines, block.ruled_word)
    for row in block.rows:
        yield f"  {row.name}: {row.words}"
        yield f"    {row.said}"
    yield from block.notes


def history(block: HistoryBlock) -> Iterator[str]:
    """One line a change."""
    yield from (block.title, block.note)
    yield from (f"  {when}, {who}: {what}" for when, who, what in block.rows)


def views(block: ViewsBlock) -> Iterator[str]:
    """The title, and each photograph or that there is none."""
    yield from (block.title, block.missing, *(f"  {one.missing or one.caption}" for one in block.pictures))
