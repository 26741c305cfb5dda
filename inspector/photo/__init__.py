"""Pictures: what a file really holds, its working copies, and taking many of them in."""
