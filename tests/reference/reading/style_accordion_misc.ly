\version "2.24.0"
A = { c''8 d'' e'' f'' }
B = { \A \A }
AA = \A
ABA = { \A \B \A }
Inst = "Accordion"
Vol = #0.7
Tm = \time 3/4
K = { \key es \minor }
Op = \with { instrumentName = \Inst }
ch = <c' e' g'>
chTwo = <d' f' a'>
p = \p
art = -.
mk = \markup { "text" }
\score { \new Staff \with { \Op } { \Tm \K \A \AA \ABA \ch \ch-. \chTwo c'4. 8 \A\p c'4-\art-\mk d'\art es'-\p \set Staff.instrumentName = \Inst \ch } }
