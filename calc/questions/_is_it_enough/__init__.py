"""Parts of the question Is it enough?: its fields, the mould, the figures, the words, the working and the drawing."""
