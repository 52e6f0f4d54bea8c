"""Parts of the question What is this resin?: its sheet, its profile, the words and the working."""
