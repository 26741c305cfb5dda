"""Running text with words that may be longer than a line, as the paths of files are."""

from PySide6.QtCore import QSize

from inspector.window.look.text import Text

LEAST = 30.0  # the width that such a text asks for, in millimetres at plain text size


class LongWords(Text):
    """Text that never makes its page wider: a word that has no room is broken where the line ends."""

    def minimumSizeHint(self) -> QSize:
        """A width at which ordinary words are whole."""
        plain = super().minimumSizeHint()
        return QSize(min(plain.width(), self.look.grown(LEAST)), plain.height())
