tune = { c'4 d' e' f' | }
