\version "2.24.0"
baz = e'
qux = { e' }
drm = \drummode { sn }
{ <\baz g'>4 <c' \baz>2 q }
\relative c' { <\baz g>4 <c \baz> d }
\relative c'' { <a \tweak color #red \baz>4 <c \baz> d }
