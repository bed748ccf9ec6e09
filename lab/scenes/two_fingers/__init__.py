"""A body on two fingers that slide together, and the strip of what they feel on the way."""
