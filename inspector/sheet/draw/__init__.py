"""How a composed sheet is drawn on paper; loaded only when a PDF is asked for."""
