"""The photographs of the open place: one large over the figures, all of them small, and keys to bring more."""

from PySide6.QtGui import QImage
from PySide6.QtWidgets import QWidget

from inspector.record.finding import Photograph
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.picture import Picture
from inspector.window.look.text import SectionHead

HIGH, LARGE_PX = 36.0, 1600


class PicturePane(Column):
    """One photograph over the figures, with keys to make it larger and to show the next."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.photographs: tuple[Photograph, ...] = ()
        self.photograph: Photograph | None = None
        self.hidden = False
        self.picture = Picture(look, HIGH)
        self.larger = Key(look, "+", step="key", name=tr("Larger"))
        self.smaller = Key(look, "−", step="key", name=tr("Smaller"))
        self.which = ChoiceKeys(look, held="kept", fit="flow")
        self.hide_key = Key(look, tr("put away"), name=tr("Put the photograph away"))
        self.add(self.picture)
        self.add(KeyRow(look, [self.larger, self.smaller, self.which, self.hide_key], fit="flow"), 2)
        self.larger.clicked.connect(lambda: self.picture.zoom(1.5))
        self.smaller.clicked.connect(lambda: self.picture.zoom(1 / 1.5))
        self.hide_key.clicked.connect(self.put_away)
        self.which.picked.connect(self._pick)
        self.hide()

    def show_photographs(self, photographs: tuple[Photograph, ...]) -> None:
        """One of these is shown; the one that was stays."""
        if photographs == self.photographs:
            return
        fresh = len(photographs) > len(self.photographs) > 0 or self.photograph not in photographs
        self.photographs = photographs
        options = [Option(p.id, str(n)) for n, p in enumerate(photographs, 1)]
        self.which.set_options(options)
        for key, photograph in zip(self.which.keys, photographs, strict=True):
            key.setAccessibleName(tr("Photograph {name}", name=photograph.caption or photograph.name))
        self.which.setVisible(len(photographs) > 1)
        if photographs and fresh:
            self.show_one(photographs[0] if self.photograph is None else photographs[-1])
        elif self.photograph is not None:
            self.which.set_held(self.photograph.id)
        self.setVisible(bool(photographs) and not self.hidden)

    def show_one(self, photograph: Photograph) -> None:
        """This photograph is shown whole."""
        self.photograph, self.hidden = photograph, False
        self.show()
        self.which.set_held(photograph.id)
        name = photograph.caption or photograph.name
        self.picture.show_image(QImage(), name, tr("coming"))
        job = Job(lambda report: self.desk.library.thumbs.get(photograph.sha256, LARGE_PX))
        job.done.connect(lambda data: self._loaded(photograph, data))
        job.failed.connect(lambda _: self._loaded(photograph, None))
        job.start(self.desk.pool)

    def _loaded(self, photograph: Photograph, data: object) -> None:
        if self.photograph is not photograph:
            return
        image = QImage.fromData(data) if isinstance(data, bytes) else QImage()
        self.picture.show_image(image, photograph.caption or photograph.name, tr("not in the store"))

    def _pick(self, key: str) -> None:
        self.show_one(next(p for p in self.photographs if p.id == key))

    def put_away(self) -> None:
        """The figures stand alone; a touch on a small photograph brings it back."""
        self.hidden = True
        self.hide()

    def let_go(self) -> None:
        """Photographs of another place are shown next."""
        self.photographs, self.photograph = (), None
        self.hide()


class PlacePhotographs(Column):
    """The photographs tied to the open place, with keys to bring in more; dropped and pasted ones come here too."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk, self.place = desk, ""
        self.pane = PicturePane(desk)
        self.add(SectionHead(desk.look, tr("Photographs of it")))

    def show_place(self, place: str) -> None:
        """The photographs of this place are shown."""
        if place != self.place:
            self.place = place
            self.pane.let_go()
        self.pane.show_photographs(tuple(p for p in self.desk.record.photographs if place and p.place == place))
