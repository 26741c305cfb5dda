"""The worth as a range where it may be printed, and every comparable with each adjustment."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.day_words import day_words
from inspector.record.words import NumbersAgree
from inspector.sheet.blocks import PicturesBlock
from inspector.sheet.figure_blocks import FigureRow, FiguresBlock, RangeRow, RangesBlock
from inspector.sheet.prints import print_of
from inspector.sheet.words import listed
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from inspector.amounts import Amounts
    from inspector.judgement.reckoned import AdjustmentLine, Fit, GridRow, Predicted, Range, Worth
    from inspector.record.money import Money
    from inspector.sheet.pieces import Picture

NONE = "–"
AGREE = {NumbersAgree.YES: "numbers said to agree", NumbersAgree.NO: "numbers said not to agree"}


def worth_blocks(
    money: Money, worth: Worth, amounts: Amounts, pictures: Mapping[str, bytes] | None = None
) -> Iterator[FiguresBlock | RangesBlock | PicturesBlock]:
    """The range with purpose, kind, day and name, or why it is not printed; then the comparables, counted and not.

    ``pictures`` are print copies of their pictures by SHA-256.
    """
    yield _worth_block(money, worth, amounts)
    for title, rows in ((tr("Comparables counted"), worth.rows), (tr("Comparables not counted"), worth.left_out)):
        if rows:
            lines = [line for row in rows for line in _grid_rows(row, amounts)]
            yield FiguresBlock(title, (tr("as entered"), tr("in {currency}", currency=worth.currency)), tuple(lines),
                               column=30.0)  # fmt: skip
    if worth.fit is not None and worth.printable:
        yield _fit_block(worth.fit, worth, amounts)
    shown = tuple(_pictures(worth, amounts, pictures or {}))
    if shown:
        yield PicturesBlock(tr("Pictures of the comparables"), shown)


def worth_lines(money: Money) -> tuple[str, ...]:
    """What an opinion of worth is never told without."""
    return (
        tr("For {purpose}; kind of value: {kind}.", purpose=money.purpose, kind=money.kind_of_value),
        tr("On {day}, in the name of {name}.", day=tr(day_words(money.effective_date)), name=money.in_the_name_of),
    )


def range_words(one: Range, amounts: Amounts) -> str:
    """Lowest to highest, the middle, and from how many."""
    return tr("{span}, middle {middle}, from {count}", span=amounts.span(one.low, one.high),
              middle=amounts.told(one.middle), count=one.count)  # fmt: skip


def _worth_block(money: Money, worth: Worth, amounts: Amounts) -> RangesBlock:
    title = tr("Worth, in {currency}", currency=worth.currency or tr("no currency entered"))
    said = [amounts.sentence(one) for one in worth.troubles]
    prices = tuple(_price(row, amounts) for row in worth.rows if row.told is not None)
    reasons = tuple(amounts.sentence(one) for one in (*worth.reasons, worth.fit_words))
    ruled = float(money.price_asked) if money.price_asked is not None and worth.rows else None
    word = tr("asked for this one, {price}", price=amounts.told(money.price_asked)) if money.price_asked else ""
    if not worth.printable:
        why = (tr("Not printed as a value."), *(amounts.sentence(one) for one in worth.why_not_printable), *said)
        return RangesBlock(title, worth.currency, prices, why, reasons, ruled, word if ruled else "")
    ends = ((tr("put right"), worth.put_right), (tr("as it stands"), worth.as_it_stands))
    rows = tuple(
        RangeRow(name, "range", range_words(one, amounts), float(one.low), float(one.middle), float(one.high))
        for name, one in ends if one is not None
    )  # fmt: skip
    lines = (amounts.sentence(worth.headline), *worth_lines(money), amounts.sentence(worth.put_right_words), *said)
    return RangesBlock(title, worth.currency, (*rows, *prices), lines, reasons, ruled, word if ruled else "")


def _price(row: GridRow, amounts: Amounts) -> RangeRow:
    told = row.told if row.told is not None else row.as_entered
    adjusted = row.as_it_stands if row.as_it_stands is not None else told
    words = tr("{entered}, adjusted {adjusted}", entered=amounts.told(told), adjusted=amounts.told(adjusted))
    name = row.title or row.place or tr(row.kind.value)
    said = listed((tr(row.kind.value), row.place if row.title else "", tr(day_words(row.date))))
    high = max(told, adjusted)
    return RangeRow(name, row.kind.value, words, float(told), float(adjusted), float(high), said)


def _grid_rows(row: GridRow, amounts: Amounts) -> Iterator[FigureRow]:
    """The comparable as entered and as adjusted, then each step between."""
    entered = f"{amounts.told(row.as_entered)} {row.currency}".strip()
    adjusted = amounts.told(row.as_it_stands) if row.as_it_stands is not None else NONE
    score = tr("score {score}", score=amounts.exact(row.score)) if row.score is not None else ""
    like = tr("likeness {weight} of 5", weight=row.weight)
    condition = tr("condition {grade} of 5", grade=row.condition) if row.condition is not None else ""
    agree = tr(AGREE[row.numbers]) if row.numbers in AGREE else ""
    link = tr("picture: {where}", where=row.photograph) if row.photograph else ""
    where = listed((tr(row.kind.value), row.place, tr(day_words(row.date)), row.source, like, condition, agree, score,
                    link), "; ")  # fmt: skip
    why = [amounts.sentence(one) for one in (row.why_not, row.note) if one is not None]
    yield FigureRow(row.title or tr(row.kind.value), (entered, adjusted), listed((where, *why), ". "))
    for line in row.lines:
        yield _step(line, amounts)
    if row.to_put_right is not None and row.put_right is not None:
        yield _step(row.to_put_right, amounts)
        yield FigureRow(tr("compared with this machine put right"), ("", amounts.told(row.put_right)), level=1)


def _step(line: AdjustmentLine, amounts: Amounts) -> FigureRow:
    return FigureRow(amounts.sentence(line.words), ("", amounts.signed(line.amount)), level=1)


def _pictures(worth: Worth, amounts: Amounts, pictures: Mapping[str, bytes]) -> Iterator[Picture]:
    """Every picture of a comparable, numbered, with what fetched how much where and when."""
    shown = [(row, picture) for row in (*worth.rows, *worth.left_out) for picture in row.pictures]
    for number, (row, picture) in enumerate(shown, 1):
        price = f"{amounts.told(row.as_entered)} {row.currency}".strip()
        what = listed((row.title, tr(row.kind.value), row.place, tr(day_words(row.date))))
        caption = f"{what}: {price}"
        name = tr("{caption}; its picture", caption=caption)
        yield print_of(number, caption, name, pictures.get(picture.sha256))


def _fit_block(fit: Fit, worth: Worth, amounts: Amounts) -> FiguresBlock:
    """The fitted middle with the interval of single sales, each sale's pull, and its warnings."""
    told = ((tr("as it stands"), fit.as_it_stands), (tr("put right"), fit.put_right))
    rows = [_predicted(name, one, amounts) for name, one in told if one is not None]
    rows += [
        FigureRow(tr("middle without {name}", name=amounts.sentence(one.name)),
                  ("", amounts.told(one.without) if one.without is not None else NONE, ""), level=1)
        for one in fit.influence
    ]  # fmt: skip
    a_point = tr("One point of the score goes with {percent} % of the price, by {count} sales.",
                 percent=f"{fit.percent_a_point:.1f}", count=fit.count)  # fmt: skip
    lines = (amounts.sentence(worth.fit_words), a_point, *(amounts.sentence(one) for one in fit.warnings))
    return FiguresBlock(tr("Fitted to the sales"), (tr("low"), tr("middle"), tr("high")), tuple(rows), lines,
                        notes=tuple(amounts.sentence(one) for one in fit.reasons))  # fmt: skip


def _predicted(name: str, one: Predicted, amounts: Amounts) -> FigureRow:
    said = amounts.sentence(one.outside) if one.outside is not None else ""
    return FigureRow(name, (amounts.told(one.low), amounts.told(one.middle), amounts.told(one.high)), said)
