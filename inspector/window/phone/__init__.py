"""The phone in the other hand, as the window sees it: opening its page, its code, and which phones have joined."""
