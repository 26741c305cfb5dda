"""What Money shows of the open machine: reckoned once a change, and the one way in which a view changes it."""

from collections.abc import Callable, Mapping
from decimal import Decimal

from PySide6.QtCore import QLocale, QObject

from inspector.judgement.reckoned import Reckoning
from inspector.judgement.state import ItemState
from inspector.record.edits import Changed, EditRefused, Part, Step, apply
from inspector.record.model import Record
from inspector.record.money import Money
from inspector.texts import Say, tr
from inspector.window.desk import Desk
from inspector.window.money.written import amounts_of, currency_name

PARTS = frozenset({Part.MONEY, Part.COMPARABLES, Part.ADJUSTMENTS, Part.REMEDIES})


class Book(QObject):
    """The reckoning as the record stands; ``at_item`` is what is open among the things to put right."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.amounts = amounts_of(QLocale())
        self._reckoning: Reckoning | None = None
        self._states: Mapping[str, ItemState] | None = None
        desk.opened.connect(self.forget)
        desk.changed.connect(self._changed)

    def forget(self) -> None:
        """Everything is reckoned anew when it is next asked for."""
        self._reckoning = self._states = None

    def _changed(self, changed: Changed | None) -> None:
        self._reckoning = None
        # What was seen of the machine does not change with a price.
        if changed is None or not changed.parts <= PARTS:
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

    @property
    def reckoning(self) -> Reckoning:
        """Costs, worth and deal as the record stands."""
        from inspector.judgement.money import money

        if self._reckoning is None:
            self._reckoning = money(self.desk.profile, self.record, self.states)
        return self._reckoning

    @property
    def currency(self) -> str:
        """The currency that amounts are told in, by name."""
        code = self.reckoning.currency
        return currency_name(code) if code else tr("no currency chosen")

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
