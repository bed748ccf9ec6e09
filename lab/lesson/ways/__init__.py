"""Ways of thinking: small named functions from what is seen to the answer they would give."""
