"""What build.py uses: setting the machine up, the engine, the pages, the assets and a local server."""
