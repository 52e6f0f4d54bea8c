"""How epoxy cures and how hot it gets: reaction, heat, the pour and its mould as cells, and what fits the reaction to a resin."""
