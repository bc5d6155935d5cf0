\version "2.24.0"
fading = #(make-music 'DecrescendoEvent 'span-direction START 'span-type 'text 'span-text "dim. poco a poco")
growing = #(make-music 'CrescendoEvent 'span-direction START 'span-type 'text 'span-text "cresc. molto")
loud = #(make-music 'AbsoluteDynamicEvent 'text "ff")
sfmp = #(make-dynamic-script "sfmp")
short = #(make-music 'ArticulationEvent 'articulation-type 'staccato)
word = #(make-music 'TextScriptEvent 'text "sul tasto")
{ c'4\fading d'\! e'\growing <f' a'>\loud g'2\short^\word s4\fading r\sfmp }
