"""What numbers, papers and parts say so far, in four lines beside the walk."""

from PySide6.QtWidgets import QWidget

from inspector.judgement.judge import Judgement
from inspector.judgement.relations import Stand
from inspector.judgement.together import allowed_words
from inspector.judgement.wording import lower_first
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.rows import Row

UNTOLD = (Stand.CANNOT, Stand.NO_RULE)


class IdentityRows(Column):
    """Each line opens the page that says the rest; a line with nothing to say is not there."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        look = desk.look
        self.numbers, self.papers = Row(look, label=tr("Numbers")), Row(look, label=tr("Papers"))
        self.years, self.odd = Row(look, label=tr("Years")), Row(look, label=tr("Odd one out"))
        pages = ((self.numbers, "numbers"), (self.papers, "numbers"), (self.years, "result"), (self.odd, "result"))
        for row, page in pages:
            self.add(row, 0)
            row.clicked.connect(lambda _=False, page=page: desk.wanted.emit(page))

    def show_judgement(self, judged: Judgement) -> None:
        """The lines say what the record says now."""
        self.numbers.say(numbers_words(judged))
        papers = [tr(paper.sentence).split(":")[0] for paper in judged.papers]
        self.papers.say("; ".join(dict.fromkeys(papers)))
        self.papers.setVisible(bool(papers))
        whole = judged.years.together
        self.years.say(tr(allowed_words(whole.best)) if whole.best else tr("nothing shows one firmly yet"))
        names = {part.id: lower_first(part.name) for part in judged.years.parts}
        odd = list(dict.fromkeys(names[key] for tie in whole.odd for key in tie if key in names))
        self.odd.say(", ".join(odd), label=tr("Odd one out") if len(odd) == 1 else tr("Odd ones out"))
        self.odd.setVisible(bool(odd))


def numbers_words(judged: Judgement) -> str:
    """How the first two places stand that can be compared, else the numbers as read."""
    told = [standing for standing in judged.standings if standing.stand not in UNTOLD]
    if told:
        return tr(told[0].sentence).split(":")[0]
    typed = [tr("{place} {number}", place=line.name, number=line.typed) for line in judged.numbers if line.typed]
    return ", ".join(typed) or tr("none entered yet")
