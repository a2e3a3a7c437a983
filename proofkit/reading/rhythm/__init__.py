"""Where prose that is read aloud may stumble: alike beginnings, echoes, runs that twist the tongue."""
