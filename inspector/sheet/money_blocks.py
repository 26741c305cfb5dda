"""Costs, plan, worth and deal as blocks of the owner's own file. Private: none of it is for the seller."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from inspector.judgement.cost_words import triangle_words
from inspector.judgement.day_words import day_words
from inspector.profile.words import Need
from inspector.sheet.blocks import ListBlock, ShortBlock
from inspector.sheet.figure_blocks import FigureRow, FiguresBlock
from inspector.sheet.pieces import Phrase, Row
from inspector.sheet.words import listed, sentence
from inspector.sheet.worth_blocks import worth_blocks
from inspector.texts import Say, tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from inspector.amounts import Amounts
    from inspector.judgement.dealt import Deal, PartOffered, Reckoning, Talking, TalkingPoint
    from inspector.judgement.reckoned import CostRow, Costs, Faulted, FrontierPoint, JobPaid, Plan, Spread, Three, Way
    from inspector.record.money import Money
    from inspector.sheet.blocks import Block

NONE = "–"


class TalkingBlock(ListBlock):
    """What was found that may be said, with its evidence."""


@dataclass(frozen=True, slots=True)
class Purse:
    """Everything of money that the owner's file tells, and how amounts are written.

    ``pictures`` are print copies of the comparables' pictures by SHA-256.
    """

    reckoning: Reckoning
    plan: Plan
    frontier: tuple[FrontierPoint, ...]
    amounts: Amounts
    pictures: Mapping[str, bytes] = field(default_factory=dict, repr=False)

    def say(self, words: Say) -> str:
        """The sentence with its amounts as they are written here."""
        return self.amounts.sentence(words)

    def three(self, three: Three | None) -> tuple[str, str, str]:
        """Low, likely and high as they are written; a dash each where they are not known."""
        if three is None:
            return NONE, NONE, NONE
        low, likely, high = (self.amounts.told(one) for one in three)
        return low, likely, high

    def about(self, three: Three) -> str:
        """The likely figure and low to high, in whole units."""
        low, likely, high = (self.amounts.whole(one) for one in three)
        return likely if low == high else tr("{likely} ({low} to {high})", likely=likely, low=low, high=high)

    def hours(self, three: Three) -> str:
        """The likely hours, with low to high where they differ."""
        low, likely, high = (self.amounts.exact(one) for one in three)
        if low == high:
            return tr("{likely} hours", likely=likely)
        return tr("{likely} hours ({low} to {high})", likely=likely, low=low, high=high)

    def span(self, three: Three) -> str:
        """Low to high, with the likely figure first where they differ."""
        if three[0] == three[2]:
            return self.amounts.told(three[1])
        return tr("{likely} ({span})", likely=self.amounts.told(three[1]), span=self.amounts.span(three[0], three[2]))


def money_blocks(money: Money, purse: Purse) -> tuple[Block, ...]:
    """Deal, costs, what is to be decided, plan, worth with every comparable, and what may be said."""
    costs = purse.reckoning.costs
    return (
        deal_block(money, purse),
        costs_block(costs, purse),
        *_decide_blocks(costs, purse),
        *plan_blocks(purse),
        *worth_blocks(money, purse.reckoning.worth, purse.amounts, purse.pictures),
        *_offers_blocks(purse),
        *_talking_blocks(purse.reckoning.talking, purse),
    )


def money_in_short(money: Money, purse: Purse) -> ShortBlock:
    """The first page's lines: all in, to put right, worth or why it is not said."""
    deal, worth, costs = purse.reckoning.deal, purse.reckoning.worth, purse.reckoning.costs
    rows, lacks = [], tr("as far as it is known") if _lacks(costs) else ""
    if deal.all_in is not None:
        rows.append(Row(tr("All in, put right"), Phrase(purse.about(deal.all_in), _under(deal.spread, purse))))
    rows.append(Row(tr("To put right"), Phrase(purse.about(costs.total), lacks)))
    if worth.printable and worth.as_it_stands is not None:
        day = tr(day_words(money.effective_date))
        said = tr("as it stands, for {purpose}, on {day}", purpose=money.purpose, day=day)
        low, high = (purse.amounts.whole(end) for end in (worth.as_it_stands.low, worth.as_it_stands.high))
        rows.append(Row(tr("Worth"), Phrase(tr("{low} to {high}", low=low, high=high), said)))
    else:
        why = " ".join(purse.say(one) for one in worth.why_not_printable)
        rows.append(Row(tr("Worth"), Phrase("", tr("Not printed as a value. {why}", why=why))))
    return ShortBlock(tr("Money, in {currency}", currency=costs.currency or tr("no currency entered")), tuple(rows))


def _lacks(costs: Costs) -> bool:
    return bool(costs.not_estimated or costs.not_priced or costs.to_decide or costs.no_way or costs.in_doubt)


def _under(spread: Spread | None, purse: Purse) -> str:
    if spread is None:
        return ""
    return tr("one case in ten under {p10}, nine in ten under {p90}",
              p10=purse.amounts.whole(spread.p10), p90=purse.amounts.whole(spread.p90))  # fmt: skip


def spread_lines(spread: Spread | None, purse: Purse) -> tuple[str, ...]:
    """P10, P50 and P90 in a sentence, and what spreads the sum most."""
    if spread is None:
        return (tr("No figure is uncertain, so there is nothing to simulate."),)
    told = tr(
        "One case in ten stays under {p10} (P10), half under {p50} (P50), nine in ten under {p90} (P90).",
        p10=purse.amounts.whole(spread.p10), p50=purse.amounts.whole(spread.p50), p90=purse.amounts.whole(spread.p90),
    )  # fmt: skip
    drivers = [tr("{name} ({share} %)", name=purse.say(one.name), share=round(100 * one.share))
               for one in spread.drivers]  # fmt: skip
    return (told, tr("What spreads it most: {names}.", names="; ".join(drivers))) if drivers else (told,)


# the deal


def deal_block(money: Money, purse: Purse) -> FiguresBlock:
    """Every line that is paid, their sum, and what the price asked would leave."""
    deal, worth = purse.reckoning.deal, purse.reckoning.worth
    rows = [FigureRow(purse.say(one.name), purse.three(one.amount), purse.say(one.words) if one.words else "")
            for one in deal.lines]  # fmt: skip
    if deal.all_in is not None:
        rows.append(FigureRow(tr("All in, put right"), purse.three(deal.all_in), strong=True))
    lines = [*(spread_lines(deal.spread, purse) if deal.spread else ()), *map(purse.say, deal.not_in_it)]
    lines += list(_against(deal, purse)) if worth.printable else [
        tr("What rests on a worth is left out, since none is printed: the reason stands there.")]  # fmt: skip
    shape = [purse.say(triangle_words(deal.spread))] if deal.spread else []
    notes = [*_entered(money, deal, purse), *shape, *map(purse.say, deal.reasons)]
    return FiguresBlock(tr("The deal"), _heads(), tuple(rows), after=_once(lines), notes=_once(notes),
                        first=_currency(deal.currency))  # fmt: skip


def _against(deal: Deal, purse: Purse) -> Iterator[str]:
    """The price asked against the worth, and the prices that keep limit and margin."""
    yield purse.say(deal.left_words)
    if deal.stands_words is not None:
        yield purse.say(deal.stands_words)
    if deal.hammer is not None:
        yield purse.say(deal.hammer.words)
    if deal.keeping is not None:
        ends = ((tr("at the middle of the range"), deal.keeping.at_middle),
                (tr("at its low end"), deal.keeping.at_low_end))  # fmt: skip
        told = [tr("{amount} {end}", amount=purse.amounts.told(one), end=end) for end, one in ends if one is not None]
        if told:
            yield tr("Highest price that keeps your margin of {margin}: {told}.",
                     margin=purse.amounts.told(deal.keeping.margin), told=", ".join(told))  # fmt: skip
        yield from map(purse.say, deal.keeping.words)


def _entered(money: Money, deal: Deal, purse: Purse) -> Iterator[str]:
    """What the owner entered for talking, as entered."""
    three = ((tr("opening"), deal.opening), (tr("target"), deal.target), (tr("walk away at"), deal.walk_away),
             (tr("limit all in"), money.limit_all_in), (tr("budget"), money.budget))  # fmt: skip
    told = [f"{name} {purse.amounts.told(one)}" for name, one in three if one is not None]
    if told:
        yield tr("As entered by you: {told}.", told="; ".join(told))
    if deal.offered.strip():
        yield tr("On parts offered: {offered}", offered=sentence(deal.offered))


def _heads() -> tuple[str, str, str]:
    return tr("low"), tr("likely"), tr("high")


def _currency(currency: str) -> str:
    return tr("in {currency}", currency=currency) if currency else tr("no currency entered")


def _once(lines: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(line for line in lines if line.strip()))


# costs


def costs_block(costs: Costs, purse: Purse) -> FiguresBlock:
    """Each way that is counted with low, likely and high, strip-downs, contingency, sum, and what is not in it."""
    rows = [*(_cost_row(row, purse) for row in costs.rows), *(_job_row(job, purse) for job in costs.jobs)]
    if costs.contingency is not None:
        rows.append(FigureRow(tr("Contingency"), purse.three(costs.contingency), purse.say(costs.contingency_words)))
    rows.append(FigureRow(tr("To put right, plain sums"), purse.three(costs.total), strong=True))
    rows += [FigureRow(tr("of which for {need}", need=tr(one.need.value)), purse.three(one.total), level=1)
             for one in costs.by_need]  # fmt: skip
    lines = [*spread_lines(costs.simulated, purse), purse.say(costs.labour_words)]
    lines += [] if costs.contingency is not None else [purse.say(costs.contingency_words)]
    lines += [purse.say(costs.level_words), *_left_out(costs)]
    how = [purse.say(costs.simulated.words), purse.say(triangle_words(costs.simulated))] if costs.simulated else []
    notes = [*map(purse.say, costs.troubles), *how, *map(purse.say, costs.reasons)]
    return FiguresBlock(tr("What it costs to put right"), _heads(), tuple(rows), after=_once(lines),
                        notes=_once(notes), first=_currency(costs.currency))  # fmt: skip


def _left_out(costs: Costs) -> Iterator[str]:
    """What is known to be missing from the sum, by name."""
    told = (
        (tr("Without a price, and not in the sum: {names}."), costs.not_priced),
        (tr("To be decided first, and not in the sum: {names}."), tuple(f.name for f in costs.to_decide)),
        (tr("No way to put right is known: {names}."), costs.no_way),
        (tr("In doubt, and no way to put it right is offered: {names}."), costs.in_doubt),
    )
    yield from (words.replace("{names}", "; ".join(names)) for words, names in told if names)


def _cost_row(row: CostRow, purse: Purse) -> FigureRow:
    both = _sum(row.parts, row.labour)
    parts = tr("parts {span}", span=purse.span(row.parts)) if row.parts is not None else tr("no price of parts")
    said = listed((_way_words(row.way), parts, purse.say(row.labour_words), _priced(row.way), row.way.note), "; ")
    return FigureRow(f"{row.way.item_name}: {row.way.name}", purse.three(both), said)


def _way_words(way: Way) -> str:
    return tr("{kind}, for {need}", kind=tr(way.kind.value), need=tr(way.need.value))


def _priced(way: Way) -> str:
    """Of which day and by whom a price is."""
    whose = tr("your own figures") if way.own or way.changed else ""
    return listed((whose, tr("priced {day}", day=tr(day_words(way.priced_on))) if way.priced_on else "", way.source))


def _job_row(job: JobPaid, purse: Purse) -> FigureRow:
    hours = purse.hours(job.hours) if job.hours is not None else tr("labour not estimated")
    return FigureRow(job.name, purse.three(job.labour),
                     tr("paid once, for: {names}; {hours}", names="; ".join(job.serves), hours=hours))  # fmt: skip


def _sum(one: Three | None, other: Three | None) -> Three | None:
    if one is None or other is None:
        return one or other
    return one[0] + other[0], one[1] + other[1], one[2] + other[2]


def _decide_blocks(costs: Costs, purse: Purse) -> Iterator[FiguresBlock]:
    """Every fault that is not decided, with each way that is offered for it."""
    rows = [row for fault in costs.to_decide for row in _ways(fault, purse)]
    if rows:
        yield FiguresBlock(tr("To be decided"), _heads(), tuple(rows),
                           (tr("None of it is in a sum. Figures are of parts alone."),),
                           first=_currency(costs.currency))  # fmt: skip


def _ways(fault: Faulted, purse: Purse) -> Iterator[FigureRow]:
    why = purse.say(fault.to_decide) if fault.to_decide is not None else ""
    yield FigureRow(fault.name, ("", "", ""), why)
    for way in fault.ways:
        hours = purse.hours(way.hours) if way.hours is not None else ""
        yield FigureRow(way.name, purse.three(way.parts), listed((_way_words(way), hours, _priced(way)), "; "), level=1)


# the plan


def plan_blocks(purse: Purse) -> Iterator[FiguresBlock]:
    """What is chosen for the budget in the order of work, what is left, and what other budgets would reach."""
    plan = purse.plan
    rows = list(_plan_rows(plan, purse))
    budget = (tr("Budget {budget}.", budget=purse.amounts.told(plan.budget)) if plan.budget is not None
              else tr("No budget entered."))  # fmt: skip
    reached = tr(
        "It costs {cost} by likely figures and brings correctness from {now} to {then} of 100; of {all} unsafe items"
        " with a price it puts right {safe}.",
        cost=purse.amounts.told(plan.cost), now=f"{plan.score - plan.gain:.1f}", then=f"{plan.score:.1f}",
        all=plan.safety_of, safe=plan.safety,
    )  # fmt: skip
    left = (tr("Left as it is: {names}.", names="; ".join(w.name for w in plan.left)),) if plan.left else ()
    lines = (budget, reached, *(() if rows else (tr("No work is chosen."),)))
    after = (*left, *map(purse.say, plan.not_in_it))
    reasons, unit = _once(map(purse.say, plan.reasons)), _currency(purse.reckoning.currency)
    yield FiguresBlock(tr("Plan, in the order of work"), (tr("likely"),), tuple(rows), lines, after, reasons,
                       column=26.0, first=unit)  # fmt: skip
    if len(purse.frontier) > 1 and purse.frontier[-1].cost > 0:
        yield FiguresBlock(tr("What other budgets reach"), (tr("costs"), tr("correct"), tr("made safe")),
                           tuple(_reached(one, purse) for one in purse.frontier), first=tr("budget"))  # fmt: skip


def _plan_rows(plan: Plan, purse: Purse) -> Iterator[FigureRow]:
    """The work in its order, what is no work but is paid for, and the sum of all."""
    lines, told = {line.key: line for line in plan.spent}, purse.amounts.told
    for number, work in enumerate(plan.order, 1):
        line = lines.pop(work.key)
        words = purse.say(line.words) if work.way is not None else ""
        said = listed(map(sentence, (words, purse.say(work.reason))), " ")
        yield FigureRow(f"{number} {work.name}", (told(line.amount),), said)
    for line in lines.values():
        yield FigureRow(purse.say(line.name), (told(line.amount),), purse.say(line.words))
    if plan.spent:
        yield FigureRow(tr("All of it"), (told(plan.cost),), strong=True)


def _reached(one: FrontierPoint, purse: Purse) -> FigureRow:
    return FigureRow(purse.amounts.told(one.budget),
                     (purse.amounts.told(one.cost), f"{one.score:.1f}", str(one.safety)))  # fmt: skip


# parts offered


def _offers_blocks(purse: Purse) -> Iterator[FiguresBlock]:
    """Every part that was offered, for how much, and the price expected for it."""
    rows = tuple(_offer(one, purse) for one in purse.reckoning.offers)
    if rows:
        yield FiguresBlock(tr("Parts offered"), (tr("offered"), tr("likely"), tr("high")), rows,
                           first=_currency(purse.reckoning.currency))  # fmt: skip


def _offer(one: PartOffered, purse: Purse) -> FigureRow:
    price = purse.amounts.told(one.price) if one.price is not None else NONE
    _, likely, high = purse.three(one.expected)
    said = [purse.say(words) for words in (one.by, one.words, one.whose) if words is not None]
    return FigureRow(purse.say(one.name), (price, likely, high), listed(said, "; "))


# what may be said


def _talking_blocks(said: Talking, purse: Purse) -> Iterator[TalkingBlock]:
    """What was found, split by what it is for, each with its evidence, sources and cost."""
    for need, points in ((Need.SAFETY, said.safety), (Need.CLAIM, said.claim), (Need.TASTE, said.taste)):
        if points:
            yield TalkingBlock(tr("What may be said, for {need}", need=tr(need.value)),
                               tuple(_point(one, purse) for one in points))  # fmt: skip


def _point(one: TalkingPoint, purse: Purse) -> Row:
    cost = purse.span(one.cost) if one.cost is not None else ""
    small = listed(map(sentence, (
        tr("shows by: {evidence}", evidence=listed(purse.say(e) for e in one.evidence)),
        tr("right by: {sources}", sources=listed((purse.say(s) for s in one.sources), "; ")),
        listed((tr("cost {cost}", cost=cost) if cost else "", purse.say(one.cost_words)), ", "),
    )), " ")  # fmt: skip
    return Row("", Phrase("", purse.say(one.sentence)), small)
