"""The stack of beams as a picture: where everything hangs, and how it is drawn."""
