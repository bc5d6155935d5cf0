{ c4 d e f | g1 }
