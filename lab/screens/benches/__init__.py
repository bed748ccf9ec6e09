"""Free build: one screen for every bench, and what each bench puts on it."""
