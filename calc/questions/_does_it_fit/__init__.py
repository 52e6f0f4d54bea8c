"""Parts of the question Does it fit the lathe?: turning over the bed or outboard, reach of a polishing wheel, the views to scale."""
