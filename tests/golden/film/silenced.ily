flute = { a4 c' d' e' | } % stavewright: allow range (a low A)
oboe = { d'4 c' d' e' | } % stavewright: allow range (no longer needed)
