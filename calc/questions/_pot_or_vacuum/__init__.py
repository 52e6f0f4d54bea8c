"""Parts of the question Pot or vacuum?: the pot, the vacuum, and the words that both use."""
