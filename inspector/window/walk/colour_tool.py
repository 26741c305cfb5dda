"""How far the colour of a part is from a reference in the same photograph: an indication, with its warning."""

from PySide6.QtGui import QImage

from inspector.photo.patch import SOURCE, WARNING, compared, patch_of
from inspector.profile.items import Item
from inspector.record.finding import Photograph
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.look.text import Text
from inspector.window.walk.into_note import Said
from inspector.window.walk.spots import Spots

LARGE_PX = 1600
PART, REFERENCE = "part", "reference"


class ColourTool(Column):
    """Two spots in one photograph of the item: on the part, and on a card or a patch known to be right."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk = desk
        look = desk.look
        self.none = Text(look, tr("Take a photograph of the item first, with the card or the reference in it."))
        self.which = ChoiceKeys(look, held="kept", fit="flow")
        self.where = ChoiceKeys(
            look, [Option(PART, tr("1: on the part")), Option(REFERENCE, tr("2: on the card or reference"))],
            held="kept", fit="fill",
        )  # fmt: skip
        self.how = Text(look, tr("Touch the picture where each lies; touch again to move it."), ink="soft")
        self.picture = Spots(look)
        self.warning = Text(look, tr(WARNING), semibold=True)
        self.said = Said(desk)
        self._shown = ""
        for widget in (self.none, self.warning, self.which, self.where, self.how, self.picture, self.said):
            self.add(widget, 2)
        self.which.picked.connect(self._open)
        self.where.picked.connect(self._aim)
        self.picture.moved.connect(self._compare)

    def show_item(self, item: Item) -> None:
        """The photographs of this item can be picked; the first is shown."""
        photographs = self._photographs()
        there = bool(photographs)
        self.none.setVisible(not there)
        for widget in (self.where, self.how, self.picture):
            widget.setVisible(there)
        self.which.setVisible(len(photographs) > 1)
        self.which.set_options([Option(p.id, tr("photograph {n}", n=n)) for n, p in enumerate(photographs, 1)])
        self._shown = ""
        self.said.say("")
        if photographs:
            self._open(photographs[0].id)

    def _photographs(self) -> tuple[Photograph, ...]:
        return self.desk.record.photographs_at(self.desk.item)

    def _open(self, photograph: str) -> None:
        found = next((p for p in self._photographs() if p.id == photograph), None)
        if found is None or photograph == self._shown:
            return
        self._shown = photograph
        self.which.set_held(photograph)
        name = found.caption or found.name
        self.picture.show_image(QImage(), name, tr("coming"))
        job = Job(lambda report: self.desk.library.thumbs.get(found.sha256, LARGE_PX))
        job.done.connect(lambda data: self._loaded(photograph, name, data))
        job.failed.connect(lambda _: self._loaded(photograph, name, None))
        job.start(self.desk.pool)

    def _loaded(self, photograph: str, name: str, data: object) -> None:
        if self._shown != photograph:
            return
        image = QImage.fromData(data) if isinstance(data, bytes) else QImage()
        self.picture.show_image(image, name, tr("not in the store"))
        self._aim(PART)

    def _aim(self, spot: str) -> None:
        self.where.set_held(spot)
        self.picture.active = (PART, REFERENCE).index(spot)
        self.picture.update()

    def _compare(self) -> None:
        part, reference = (self.picture.pixels(n) for n in range(2))
        if not part or not reference:
            self.said.say("")
            return
        answer = compared(patch_of(part), patch_of(reference))
        doubts = [tr(w) for w in answer.warnings if w is not WARNING]
        found = next((p for p in self._photographs() if p.id == self._shown), None)
        note = tr("Colour, an indication only: {sentence} Photograph {name}.", sentence=tr(answer.sentence),
                  name=found.name if found else "")  # fmt: skip
        self.said.say(tr(answer.sentence), doubts, [tr(SOURCE)], note)
