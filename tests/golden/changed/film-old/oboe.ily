oboe = { c''1 d''1 }
