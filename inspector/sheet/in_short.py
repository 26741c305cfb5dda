"""The first page in short: how much was seen and is right, the numbers, the years, and what is still open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.score import percent_seen
from inspector.judgement.wording import lower_first
from inspector.sheet import seen
from inspector.sheet.blocks import Phrase, QuestionsBlock, Row, ShortBlock
from inspector.sheet.figure_blocks import Fraction, StoryBlock
from inspector.sheet.reading import how_read
from inspector.sheet.words import listed, sentence
from inspector.texts import tr, trn

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.judgement.judge import Judgement
    from inspector.judgement.relations import Standing
    from inspector.sheet.blocks import Block

MOST_ASKED = 6  # open questions told on the first page; all of them stand further on


def found_in_short(judgement: Judgement) -> Iterator[Block]:
    """Coverage with the score, the numbers and the years: what the first page tells besides claim and safety."""
    yield story_block(judgement)
    yield numbers_in_short(judgement)
    yield years_in_short(judgement)


def story_block(judgement: Judgement) -> StoryBlock:
    """Coverage, then how much of what was examined is right, with the lowest and highest it may end at."""
    score = judgement.score
    percent = percent_seen(score.seen_percent)
    examined = Fraction(tr("Seen"), percent, f"{percent} %", seen.coverage(percent))
    name, none = tr("Correct, of what was seen"), tr("nothing seen yet")
    if score.value is None:
        right = Fraction(name, None, "–", none, round(score.low), round(score.high))
    else:
        low, high = round(score.low), round(score.high)
        may_end = tr("may end at {low} to {high}", low=low, high=high)
        right = Fraction(name, round(score.value), str(round(score.value)), may_end, low, high)
    policy = tr("Pattern parts are counted as {policy}.", policy=tr(score.policy))
    apart = tr("Identity, condition and safety are kept apart from it.")
    return StoryBlock(tr("What was seen, and how much is right"), examined, right, f"{policy} {apart}")


def numbers_in_short(judgement: Judgement) -> ShortBlock:
    """Every number as typed with its place, then what raises a question."""
    read = [one for one in judgement.numbers if one.typed]
    said = tuple(Row("", Phrase(one.typed, f"{one.name}, {how_read(one.how_read)}{'.' if one is read[-1] else ';'}"))
                 for one in read)  # fmt: skip
    unread = listed((one.name for one in judgement.numbers if not one.typed), "; ")
    rows = (*said, *((Row("", Phrase("", tr("Not read: {names}.", names=unread))),) if unread else ()))
    asks = (Row("", Phrase("", _stands(one))) for one in judgement.standings if one.raises)
    return ShortBlock(tr("Numbers as read"), (*rows, *asks), running=True)


def _stands(one: Standing) -> str:
    names = tr("{one} and {other}", one=one.names[0], other=lower_first(one.names[1]))
    return sentence(f"{names}: {tr(one.sentence)}")


def years_in_short(judgement: Judgement) -> ShortBlock:
    """The years that the parts allow, and how the claimed year stands to them."""
    years = judgement.years
    told = (years.sentence, years.claim_sentence)
    return ShortBlock(tr("Years"), tuple(Row("", Phrase("", tr(one))) for one in told if one is not None), running=True)


def questions_in_short(judgement: Judgement) -> QuestionsBlock:
    """The first open questions; that there are more, and where, is said beside them."""
    asked = [tr(one.short or one.text) for one in judgement.questions]
    rows = tuple(Row("", Phrase("", one)) for one in asked[:MOST_ASKED])
    more = len(asked) - MOST_ASKED
    note = trn("{count} more stands further on.", "{count} more stand further on.", more) if more > 0 else ""
    return QuestionsBlock(tr("Open questions"), rows, numbered=True, note=note if rows else tr("None is noted."))
