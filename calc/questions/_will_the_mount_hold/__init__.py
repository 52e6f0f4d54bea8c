"""The parts of Will the mount hold?: the piece on its mount, what helps, what is read, and the drawing."""
