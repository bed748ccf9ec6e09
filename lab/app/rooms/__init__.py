"""The places of the lab, a module each: what its screen is shown, and what the screen's intents lead to."""
