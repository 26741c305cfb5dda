"""The addresses of this computer's own network connections."""

from __future__ import annotations

from inspector.phone.addresses import Place, usable


def local_places() -> tuple[Place, ...]:
    """Those on which a phone of the same local network could reach this computer now."""
    from PySide6.QtNetwork import QNetworkInterface

    running = QNetworkInterface.InterfaceFlag.IsUp | QNetworkInterface.InterfaceFlag.IsRunning
    working = [one for one in QNetworkInterface.allInterfaces() if (one.flags() & running) == running]
    return usable(
        Place(entry.ip().toString(), one.humanReadableName()) for one in working for entry in one.addressEntries()
    )
