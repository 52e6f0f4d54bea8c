"""Parts of the question How deep and how hot?: the pour as planned, its runs, words, and curve."""
