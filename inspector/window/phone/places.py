"""The addresses of this computer's own network connections."""

from __future__ import annotations

from PySide6.QtNetwork import QNetworkInterface

from inspector.phone.addresses import Place, usable

RUNNING = QNetworkInterface.InterfaceFlag.IsUp | QNetworkInterface.InterfaceFlag.IsRunning


def local_places() -> tuple[Place, ...]:
    """Those on which a phone of the same local network could reach this computer now."""
    working = [one for one in QNetworkInterface.allInterfaces() if (one.flags() & RUNNING) == RUNNING]
    return usable(
        Place(entry.ip().toString(), one.humanReadableName()) for one in working for entry in one.addressEntries()
    )
