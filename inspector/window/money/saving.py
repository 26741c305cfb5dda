"""A private paper of Money is made and kept as a file, where the person wants it."""

from collections.abc import Callable
from pathlib import Path

from inspector.sheet.write import SheetTrouble, write_atomically
from inspector.texts import tr
from inspector.window.money.book import Book


def ask_and_save(book: Book, what: str, kind: str, make: Callable[[], bytes], say: Callable[[str], None]) -> None:
    """The file is asked for, made and written; ``say`` hears how that went."""
    record = book.record
    title = "".join(c if c.isalnum() else "-" for c in record.claim.model or "machine")

    def save(path: Path) -> None:
        try:
            write_atomically(path, make())
        except SheetTrouble as trouble:
            say(tr(trouble.sentence))
        else:
            say(tr("Saved as {name}.", name=path.name))

    book.desk.ask.where_to_save(f"{title}-{what}-{record.id}.{kind}".lower(), save)
