\version "2.24.0"
harp = { c''4 d'' e'' f'' | }
\new Staff \harp
