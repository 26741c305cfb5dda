"""The photographs of the open place: one large over the figures, all of them small, and keys to bring more."""

from PySide6.QtCore import QRect, QSize, Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.record.finding import Photograph
from inspector.texts import tr
from inspector.window.bench import open_bench
from inspector.window.bringing import PhotographStrip, Tie
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.measured import Places, Placing, height_at, measured
from inspector.window.look.picture import STEP, Picture
from inspector.window.look.text import SectionHead

HIGH, KEYS, LARGE_PX = 36.0, 26.5, 1600


class PicturePane(Placing, QWidget):
    """One photograph over the figures, and beside it keys to make it larger and to show the next."""

    put_away_now = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        look = self.look = desk.look
        self.photographs: tuple[Photograph, ...] = ()
        self.photograph: Photograph | None = None
        self.hidden = False
        self.picture = Picture(look, HIGH, self)
        self.larger = Key(look, "+", step="key", name=tr("Larger"))
        self.smaller = Key(look, "−", step="key", name=tr("Smaller"))
        self.next = Key(look)
        self.away = Key(look, tr("put away"), name=tr("Put the photograph away"))
        self.keys = KeyRow(look, [self.larger, self.smaller, self.next, self.away], fit="fill", parent=self)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.larger.clicked.connect(lambda: self.picture.zoom(STEP))
        self.smaller.clicked.connect(lambda: self.picture.zoom(1 / STEP))
        self.next.clicked.connect(self.show_next)
        self.away.clicked.connect(self.put_away)
        look.changed.connect(self._again)
        self.hide()

    def _again(self) -> None:
        self.forget()
        self.settle()

    @measured
    def places_at(self, width: int) -> Places:
        """The keys at the right, and the photograph as high as they are."""
        side, gap = self.look.grown(KEYS), self.look.px(2)
        high = max(height_at(self.keys, side), self.look.px(HIGH))
        wide = max(width - side - gap, 1)
        keys = QRect(wide + gap, 0, side, high)
        return [(self.picture, QRect(0, 0, wide, high)), (self.keys, keys)], high

    def sizeHint(self) -> QSize:
        """Room for a number and the keys."""
        wide = self.look.px(60) + self.look.grown(KEYS)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """Room for a finger and the keys."""
        return QSize(self.look.px(20) + self.look.grown(KEYS), 0)

    def show_photographs(self, photographs: tuple[Photograph, ...]) -> None:
        """One of these is shown; the one that was stays."""
        if photographs == self.photographs:
            return
        fresh = len(photographs) > len(self.photographs) > 0 or self.photograph not in photographs
        self.photographs = photographs
        if photographs and fresh:
            self.show_one(photographs[0] if self.photograph is None else photographs[-1])
        self._say_which()
        self.setVisible(bool(photographs) and not self.hidden)

    def _say_which(self) -> None:
        many = len(self.photographs)
        self.next.setVisible(many > 1)
        if self.photograph in self.photographs:
            at = self.photographs.index(self.photograph) + 1
            words = tr("{n} of {all}", n=at, all=many)
            self.next.say(words, name=tr("Photograph {which}; show the next", which=words))

    def show_next(self) -> None:
        """The photograph after this one is shown, after the last the first."""
        at = self.photographs.index(self.photograph) if self.photograph in self.photographs else -1
        self.show_one(self.photographs[(at + 1) % len(self.photographs)])

    def show_one(self, photograph: Photograph) -> None:
        """This photograph is shown whole."""
        self.photograph, self.hidden = photograph, False
        self.show()
        self._say_which()
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

    def put_away(self) -> None:
        """The figures stand alone; a key below them brings the photograph back."""
        self.hidden = True
        self.hide()
        self.put_away_now.emit()

    def let_go(self) -> None:
        """Photographs of another place are shown next."""
        self.photographs, self.photograph = (), None
        self.hide()


class PlaceStrip(PhotographStrip):
    """Small pictures of the open place, and keys to bring more."""

    place_id = ""

    def tie(self) -> Tie:
        """The place that is open."""
        return Tie(place=self.place_id)


class PlacePhotographs(Column):
    """The photographs tied to the open place; dropped and pasted ones come here too."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.pane = PicturePane(desk)
        self.strip = PlaceStrip(desk)
        self.over = Key(desk.look, tr("show over the figures"), name=tr("Show the photograph over the figures"))
        self.over.clicked.connect(self._bring_back)
        self.pane.put_away_now.connect(self._say_over)
        self.add(SectionHead(desk.look, tr("Photographs of it")))
        self.add(self.strip, 2)
        self.closely = Key(desk.look, tr("look closely"), name=tr("Look at the photograph closely"))
        self.closely.clicked.connect(self._look_closely)
        self.add(KeyRow(desk.look, [self.closely, self.over], fit="flow"), 2)
        self.closely.hide()
        self.over.hide()

    def show_place(self, place: str) -> None:
        """The photographs of this place are shown."""
        if place != self.strip.place_id:
            self.strip.place_id = place
            self.pane.let_go()
        self.strip.show_item()
        self.pane.show_photographs(self.strip.tied(self.strip.tie()))
        self._say_over()

    def _bring_back(self) -> None:
        if self.pane.photograph is not None:
            self.pane.show_one(self.pane.photograph)
        self._say_over()

    def _look_closely(self) -> None:
        if self.pane.photograph is not None:
            open_bench(self.pane.desk, self.pane.photograph.id)

    def _say_over(self) -> None:
        self.closely.setVisible(bool(self.pane.photographs))
        self.over.setVisible(bool(self.pane.photographs) and self.pane.hidden)
