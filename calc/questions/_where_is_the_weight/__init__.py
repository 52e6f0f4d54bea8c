"""Parts of 'Where is the weight?'."""
