"""The least that a window costs: a process that shows an empty one and ends at its first paint."""

import sys

from PySide6.QtWidgets import QApplication, QWidget


class Bare(QWidget):
    """Ends the process when it is painted."""

    def paintEvent(self, event):
        sys.stdout.write("painted\n")
        sys.stdout.flush()
        application.quit()


application = QApplication(sys.argv)
window = Bare()
window.resize(1280, 800)
window.show()
sys.exit(application.exec())
