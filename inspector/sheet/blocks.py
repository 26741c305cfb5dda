"""The parts of a sheet as plain text and figures, in the reader's language, ready to be set or drawn."""

from __future__ import annotations

from dataclasses import dataclass, field

from inspector.sheet.figure_blocks import (
    ContentsBlock,
    FiguresBlock,
    HistoryBlock,
    RangesBlock,
    SourceListBlock,
    StoryBlock,
    ViewsBlock,
)
from inspector.sheet.pieces import Cited, Expectation, Phrase, Picture, Row
from inspector.sheet.stand_blocks import (
    BesideBlock,
    PapersBlock,
    SeventeenBlock,
    StandRow,
    StandsBlock,
    YearRow,
    YearsBlock,
    YearSpan,
)
from inspector.sheet.walk_blocks import BlanksBlock, StationBlock, TableBlock, TableItem, WalkItem

__all__ = [  # the smaller parts, which are to be had here too
    "BesideBlock", "BlanksBlock", "Cited", "ContentsBlock", "Expectation", "FiguresBlock", "HistoryBlock",
    "PapersBlock", "Phrase", "Picture", "RangesBlock", "Row", "SeventeenBlock", "SourceListBlock", "StandRow",
    "StandsBlock", "StationBlock", "StoryBlock", "TableBlock", "TableItem", "ViewsBlock", "WalkItem", "YearRow",
    "YearSpan", "YearsBlock",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Head:
    """The machine's name, what it is claimed to be, and where and by whom it was seen."""

    name: str
    claimed: Phrase
    lines: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SafetyBlock:
    """What was found unsafe, what bears on safety and was not examined, and the caution."""

    title: str
    sign: str
    findings: tuple[str, ...]
    not_seen: str
    caution: str


@dataclass(frozen=True, slots=True)
class Count:
    """How many items carry a sign."""

    sign: str
    number: int
    word: str


@dataclass(frozen=True, slots=True)
class Spot:
    """Where an item lies on the outline, its sign, and the number of its finding where it has one."""

    x: float
    y: float
    sign: str
    name: str
    number: int | None = None


@dataclass(frozen=True, slots=True)
class SeenBlock:
    """How much was examined, as counts, as per cent, and on the outline drawing."""

    title: str
    total: str
    counts: tuple[Count, ...]
    percent: int
    coverage: str
    outline: str | None = field(default=None, repr=False)
    spots: tuple[Spot, ...] = ()


@dataclass(frozen=True, slots=True)
class Cell:
    """One figure of a number: what is shown for it, how it was seen, and what else it could be."""

    text: str
    clarity: str
    others: str = ""


@dataclass(frozen=True, slots=True)
class NumberRow:
    """A number as read at one place; ``reads`` is every possibility that the rules leave, with who says so."""

    place: str
    typed: str
    cells: tuple[Cell, ...]
    says: str
    how: str
    more: tuple[str, ...] = ()
    reads: tuple[Expectation, ...] = ()


@dataclass(frozen=True, slots=True)
class NumbersBlock:
    """Every number as read, and the places that were not read."""

    title: str
    rows: tuple[NumberRow, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Items by name that were not examined, for one and the same cause."""

    sign: str
    word: str
    names: tuple[str, ...]

    def joined(self) -> str:
        """The names in one sentence, parted so that what stands in brackets cannot be taken for a name."""
        told = any("(" in name for name in self.names)
        return ("; " if told else ", ").join(self.names) + "."


@dataclass(frozen=True, slots=True)
class NotExaminedBlock:
    """Everything that was not examined, by name."""

    title: str
    groups: tuple[Group, ...]
    closing: str


@dataclass(frozen=True, slots=True)
class PartRow:
    """The score of one station or assembly; ``value`` is None where nothing was seen."""

    name: str
    value: int | None
    low: int
    high: int
    says: str


@dataclass(frozen=True, slots=True)
class ScoreBlock:
    """Coverage first, then the score with its lowest and highest, in whole and by station and assembly."""

    title: str
    coverage: str
    whole: PartRow
    policy: str
    reasons: tuple[str, ...]
    tables: tuple[tuple[str, tuple[PartRow, ...]], ...]


@dataclass(frozen=True, slots=True)
class SourcesBlock:
    """What the grades of sources mean."""

    title: str
    grades: tuple[Cited, ...]


@dataclass(frozen=True, slots=True)
class Voice:
    """What one person says about an item, and who and when."""

    rows: tuple[Row, ...]
    said: str = ""


@dataclass(frozen=True, slots=True)
class Entry:
    """One finding in full."""

    number: int
    sign: str
    word: str
    name: str
    expected: tuple[Expectation, ...]
    voices: tuple[Voice, ...]
    pictures: tuple[Picture, ...] = ()


@dataclass(frozen=True, slots=True)
class FindingsBlock:
    """Findings in full, numbered as on the outline."""

    title: str
    note: str
    entries: tuple[Entry, ...]
    none: str = ""


@dataclass(frozen=True, slots=True)
class ListBlock:
    """A titled list; each line may carry a sign or a number, or all run on in one paragraph."""

    title: str
    rows: tuple[Row, ...]
    sign: str = ""
    numbered: bool = False
    note: str = ""
    running: bool = False


class WideBlock(ListBlock):
    """A paragraph across the page that begins with its title."""


class ShortBlock(ListBlock):
    """A few small lines of the first page."""


class PassesBlock(ListBlock):
    """What passed, one line an item."""


class ConditionBlock(ListBlock):
    """The state of the parts, whatever their year."""


class PointsBlock(ListBlock):
    """The total by a points scheme, what was lost and what may be, each with its reason."""


class ClaimBlock(ListBlock):
    """What is claimed: by the advertisement, by the title, and the four kinds of year, each apart."""


class QuestionsBlock(ListBlock):
    """What is still open, and the next step."""


class StatementsBlock(ListBlock):
    """What was said, by whom; not verified."""


class InquiriesBlock(ListBlock):
    """What was asked of bodies outside, and their reply."""


class PeopleBlock(ListBlock):
    """Who was there, in which role and with which interest."""


class CautionsBlock(ListBlock):
    """The cautions that hold for this machine and this sheet."""


@dataclass(frozen=True, slots=True)
class PicturesBlock:
    """The photographs that stand at no finding in full."""

    title: str
    pictures: tuple[Picture, ...]


@dataclass(frozen=True, slots=True)
class ReplyBlock:
    """Ruled room for the seller's own words."""

    title: str
    invites: str
    lines: int


@dataclass(frozen=True, slots=True)
class Signed:
    """One signature line; without strokes or a typed name it is empty and ``state`` says so."""

    who: str
    state: str
    strokes: tuple[tuple[tuple[float, float], ...], ...] = ()
    statement: str = ""
    typed: str = ""


@dataclass(frozen=True, slots=True)
class SignatureBlock:
    """The signature lines and what signing means."""

    title: str
    signatures: tuple[Signed, ...]
    note: str


Block = (
    Head
    | SafetyBlock
    | SeenBlock
    | NumbersBlock
    | StandsBlock
    | YearsBlock
    | NotExaminedBlock
    | ScoreBlock
    | SourcesBlock
    | FindingsBlock
    | ListBlock
    | PicturesBlock
    | ReplyBlock
    | SignatureBlock
    | StationBlock
    | TableBlock
    | BlanksBlock
    | StoryBlock
    | ContentsBlock
    | FiguresBlock
    | RangesBlock
    | SourceListBlock
    | HistoryBlock
    | ViewsBlock
)


@dataclass(frozen=True, slots=True)
class Sheet:
    """A whole sheet: what it is, whose record and version it shows, when it was made, and its blocks in order."""

    title: str
    kind: str
    record_id: str
    version: int
    made_at: str
    machine: str
    author: str
    foot: str
    stamp: tuple[str, ...]
    blocks: tuple[Block, ...]
