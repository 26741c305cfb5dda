"""What Money shows of the open machine: reckoned once a change, and the one way in which a view changes it."""

from collections.abc import Callable, Mapping
from decimal import Decimal

from PySide6.QtCore import QLocale, QObject

from inspector.judgement.dealt import Deal, PartOffered, Talking
from inspector.judgement.reckoned import Costs, Worth
from inspector.judgement.state import ItemState
from inspector.record.edits import Changed, Step, apply
from inspector.record.model import Record
from inspector.record.money import Money
from inspector.record.refusing import EditRefused
from inspector.texts import Say, tr
from inspector.window.desk import MONEY_PARTS, Desk
from inspector.window.money.written import amounts_of, currency_name


class Book(QObject):
    """Costs, worth and deal as the record stands."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.amounts = amounts_of(QLocale())
        self._costs: Costs | None = None
        self._worth: Worth | None = None
        self._deal: Deal | None = None
        self._talking: Talking | None = None
        self._offers: tuple[PartOffered, ...] | None = None
        self._states: Mapping[str, ItemState] | None = None
        desk.opened.connect(self.forget)
        desk.changed.connect(self._changed)

    def forget(self) -> None:
        """Everything is reckoned anew when it is next asked for."""
        self._states = None
        self._reckon_anew()

    def _reckon_anew(self) -> None:
        self._costs = self._worth = self._deal = self._talking = self._offers = None

    def _changed(self, changed: Changed | None) -> None:
        self._reckon_anew()
        # What was seen of the machine does not change with a price.
        if changed is None or not changed.parts <= MONEY_PARTS:
            self._states = None

    @property
    def record(self) -> Record:
        """The record as it stands."""
        return self.desk.record

    @property
    def settings(self) -> Money:
        """What was entered about money."""
        return self.desk.record.money

    @property
    def states(self) -> Mapping[str, ItemState]:
        """How every item stands."""
        from inspector.judgement.state import states

        if self._states is None:
            self._states = states(self.desk.profile, self.record)
        return self._states

    # Each only where it is looked at: a sum that is being changed is not kept waiting for talking points.

    @property
    def costs(self) -> Costs:
        """What putting right costs."""
        from inspector.judgement.cost import costs

        if self._costs is None:
            self._costs = costs(self.desk.profile, self.record, self.states)
        return self._costs

    @property
    def worth(self) -> Worth:
        """What it is worth by the comparables entered."""
        from inspector.judgement.worth import worth

        if self._worth is None:
            self._worth = worth(self.desk.profile, self.record, self.costs)
        return self._worth

    @property
    def deal(self) -> Deal:
        """What the deal comes to."""
        from inspector.judgement.deal import deal

        if self._deal is None:
            self._deal = deal(self.record, self.costs, self.worth)
        return self._deal

    @property
    def talking(self) -> Talking:
        """What was found that may be said."""
        from inspector.judgement.talking import talking

        if self._talking is None:
            self._talking = talking(self.desk.profile, self.record, self.states, self.costs)
        return self._talking

    @property
    def offers(self) -> tuple[PartOffered, ...]:
        """The parts offered, each against the price expected."""
        from inspector.judgement.part_offers import part_offers

        if self._offers is None:
            self._offers = part_offers(self.desk.profile, self.record)
        return self._offers

    @property
    def code(self) -> str:
        """The three letters of the currency that amounts are told in; empty where none is chosen."""
        return self.costs.currency

    @property
    def currency(self) -> str:
        """The currency that amounts are told in, by name."""
        return currency_name(self.code) if self.code else tr("no currency chosen")

    def say(self, words: Say) -> str:
        """The sentence in the user's language, with amounts as they are written here."""
        return self.amounts.sentence(words)

    def told(self, amount: Decimal | None, none: str = "") -> str:
        """The amount in print, or these words where there is none."""
        return none if amount is None else self.amounts.told(amount)

    def about(self, low: Decimal, high: Decimal) -> str:
        """From low to high in whole units; nothing where both are the same."""
        return "" if low == high else tr("{low} to {high}", low=self.amounts.whole(low), high=self.amounts.whole(high))

    def do(self, make: Callable[[], Step]) -> str:
        """The step is done and kept, and nothing is said; else why not, in a sentence for the page alone."""
        try:
            step = make()
            apply(self.record, step)
        except EditRefused as refused:
            return self.say(refused.sentence)
        return "" if self.desk.do(step) else tr("It could not be kept.")
