"""How this book does things: one file a matter. Checks point at the odd ones out, the style sheet lists them."""
