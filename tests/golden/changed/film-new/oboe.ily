oboe = { c''1 e''1 }
