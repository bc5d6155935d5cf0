\version "2.24.0"
foo = { c' \tag #'a d' \tag #'b e' f' } { \keepWithTag #'a \foo \removeWithTag #'a \foo \foo }
