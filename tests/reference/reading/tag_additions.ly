\version "2.24.0"
m = \relative c' { c4 \tag #'x { d e } \tag #'y << f \new Voice { a } >> <\tag #'z c e>4 \tag #'x g }
o = { g4 }
\new Staff \pushToTag #'x { a8 b } \m
\new Staff \appendToTag #'x \o \m
\new Staff \appendToTag #'y { r8 c8 } \pushToTag #'x \o { c'4 \m \tag #'x { \o } }
\new Staff \m
\new Staff \relative c'' \pushToTag #'x { c4 } { g4 \tag #'x { a } f, b e }
\new Staff { \pushToTag #'c g' { \tag #'c <c' e'>4 \tag #'c \relative { d'4 } } }
\new Staff \keepWithTag #'k \appendToTag #'x { \tag #'k c'4 \tag #'l d'4 } { \tag #'x { e'4 } }
