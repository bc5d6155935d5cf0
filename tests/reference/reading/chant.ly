% What the compiler's own gregorian.ly defines.
\version "2.24.0"
\include "gregorian.ly"
\new VaticanaStaff \new VaticanaVoice = "chant" {
  \[ g8 \pes a \virga b \] \[ \auctum \descendens a \flexa g \] \divisioMinima
  \[ \inclinatum c' \inclinatum b \inclinatum \deminutum a \] \divisioMaior \augmentum a \augmentum { c d }
  \virgula c\ictus d\circulus \augmentum \virga d \divisioMaxima \[ \quilisma e \oriscus f \stropha g \cavum a \linea b \]
  f\accentus g\semicirculus \finalis
}
