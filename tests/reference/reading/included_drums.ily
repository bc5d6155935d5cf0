bd4 sn <hh bd>8 hh sn:32 tommh cymc hhho bd cb
