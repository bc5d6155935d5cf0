%% Asks the compiler when it sets each syllable. One row each,
%%   score  moment  grace  text  link  line  voice  ends  file  line  column
%% where `link` is -- or __ when such a sign stands behind it, otherwise -; `line` is the id of the Lyrics context and `voice` the
%% id of the voice whose notes it takes ("-" when the syllable has a duration of its own). `ends` is the end of the last note that
%% this voice sings on the syllable: the notes at its moment, and those behind it for which the compiler says that a melisma is on;
%% "-" when it follows a whole staff.
%% Used like oracle.ily; writes FILE.lyrics.tsv.
\version "2.24.0"

#(define lyrics-port #f)
#(define lyrics-score 0)
#(define lyrics-rows '()) % newest first: line, voice, moment, end of its own duration, text, place, ...
#(define lyrics-notes '()) % newest first: voice, moment, end, whether a melisma is on

#(define (lyrics-out)
   (if (not lyrics-port)
       (set! lyrics-port (open-file (string-append (ly:parser-output-name) ".lyrics.tsv") "w")))
   lyrics-port)

#(define (lyrics-end now event)
   (let ((length (ly:event-property event 'length)))
     (if (or (not (ly:moment? length)) (not (zero? (ly:moment-grace now))))
         (ly:moment-main now)
         (+ (ly:moment-main now) (ly:moment-main length)))))

#(define (lyrics-note context event)
   (let ((now (ly:context-current-moment context))
         (busy (any (lambda (property) (eq? #t (ly:context-property context property)))
                    (ly:context-property context 'melismaBusyProperties))))
     (set! lyrics-notes (cons (list context now (lyrics-end now event) busy) lyrics-notes))))

#(define (lyrics-syllable context event)
   (let ((now (ly:context-current-moment context))
         (voice (ly:context-property context 'associatedVoiceContext))
         (text (ly:event-property event 'text))
         (input (ly:event-property event 'origin)))
     (set! lyrics-rows
           (cons (list context (and (ly:context? voice) voice) now (lyrics-end now event)
                       (if (string? text) text (markup->string text))
                       (if (ly:input-location? input) (ly:input-file-line-char-column input) '("-" 0 0))
                       (eq? #t (ly:context-property context 'ignoreMelismata))
                       (list "-"))
                 lyrics-rows))))

%% The sign belongs to the newest syllable of its line.
#(define (lyrics-link sign)
   (lambda (context event)
     (let ((row (assq context lyrics-rows)))
       (if row (set-car! (eighth row) sign)))))

%% `notes` in order of time, from the moment of the syllable on.
#(define (lyrics-last-end notes now next ignore end)
   (cond ((null? notes) end)
         ((and next (not (ly:moment<? (second (car notes)) next))) end)
         ((or (equal? (second (car notes)) now)
              (and (fourth (car notes)) (not ignore)))
          (lyrics-last-end (cdr notes) now next ignore (max end (third (car notes)))))
         (else end)))

#(define (lyrics-print row later notes)
   (let* ((now (third row))
          (voice (second row))
          (next (find (lambda (other) (and (eq? (first other) (first row)) (ly:moment<? now (third other)))) later))
          (end (if voice
                   (and (assq voice notes) (lyrics-last-end
                    (filter (lambda (note) (and (eq? (first note) voice) (not (ly:moment<? (second note) now)))) notes)
                    now (and next (third next)) (seventh row) (ly:moment-main now)))
                   (fourth row)))
          (place (sixth row)))
     (format (lyrics-out) "~a\t~a\t~a\t~a\t~a\t~a\t~a\t~a\t~a\t~a\t~a\n"
             lyrics-score (ly:moment-main now) (ly:moment-grace now) (fifth row) (car (eighth row)) (ly:context-id (first row))
             (if voice (ly:context-id voice) "-") (or end "-") (basename (first place)) (second place) (third place))))

#(define lyrics-engraver
   (lambda (context)
     (make-engraver
      ((initialize engraver)
       (set! lyrics-score (1+ lyrics-score)))
      ((finalize engraver)
       (let ((notes (reverse lyrics-notes)))
         (let print ((rows (reverse lyrics-rows)))
           (if (pair? rows)
               (begin
                 (lyrics-print (car rows) (cdr rows) notes)
                 (print (cdr rows))))))
       (set! lyrics-rows '())
       (set! lyrics-notes '())
       (force-output (lyrics-out))))))

#(define (lyrics-listener note)
   (lambda (context)
     (make-engraver
      ((initialize engraver)
       (ly:add-listener (lambda (event) (note context event))
                        (ly:context-events-below context)
                        (if (eq? note lyrics-note) 'note-event 'lyric-event))
       (if (eq? note lyrics-syllable)
           (begin
             (ly:add-listener (lambda (event) ((lyrics-link "--") context event))
                              (ly:context-events-below context) 'hyphen-event)
             (ly:add-listener (lambda (event) ((lyrics-link "__") context event))
                              (ly:context-events-below context) 'extender-event)))))))

\layout {
  \context { \Score \consists #lyrics-engraver }
  \context { \Lyrics \consists #(lyrics-listener lyrics-syllable) }
  \context { \VaticanaLyrics \consists #(lyrics-listener lyrics-syllable) }
  \context { \GregorianTranscriptionLyrics \consists #(lyrics-listener lyrics-syllable) }
  \context { \Voice \consists #(lyrics-listener lyrics-note) }
  \context { \DrumVoice \consists #(lyrics-listener lyrics-note) }
  \context { \TabVoice \consists #(lyrics-listener lyrics-note) }
  \context { \CueVoice \consists #(lyrics-listener lyrics-note) }
  \context { \NullVoice \consists #(lyrics-listener lyrics-note) }
  \context { \VaticanaVoice \consists #(lyrics-listener lyrics-note) }
  \context { \GregorianTranscriptionVoice \consists #(lyrics-listener lyrics-note) }
  \context { \MensuralVoice \consists #(lyrics-listener lyrics-note) }
  \context { \PetrucciVoice \consists #(lyrics-listener lyrics-note) }
  \context { \KievanVoice \consists #(lyrics-listener lyrics-note) }
}
