%% Asks the compiler what every written note means: the reference of test_truth.py.
%% Used as: lilypond -dinclude-settings=tests/reference/oracle.ily -dno-print-pages FILE.ly
%% Writes NAME.truth.tsv beside the other output: one row for each note or rest that the compiler hears, in the columns of
%% `stavewright events`:
%%   score  onset  grace  duration  kind  pitch  staff  voice  file  line  column
%% onset, grace and duration are exact fractions of a whole note; column counts characters from 0.
\version "2.24.0"

#(define oracle-port #f)
#(define oracle-score 0)
#(define (oracle-out)
   (if (not oracle-port)
       (set! oracle-port
             (open-file (string-append (ly:parser-output-name) ".truth.tsv") "w")))
   oracle-port)

#(define (oracle-find context name)
   (cond ((not (ly:context? context)) #f)
         ((eq? (ly:context-name context) name) context)
         (else (oracle-find (ly:context-parent context) name))))

#(define (oracle-staff context)
   (cond ((not (ly:context? context)) "-")
         ((memq (ly:context-name context)
                '(Staff DrumStaff RhythmicStaff TabStaff VaticanaStaff MensuralStaff
                  GregorianTranscriptionStaff KievanStaff PetrucciStaff))
          (ly:context-id context))
         (else (oracle-staff (ly:context-parent context)))))

#(define (oracle-pitch p)
   (let* ((note (string-ref "cdefgab" (ly:pitch-notename p)))
          (alt (* 4 (ly:pitch-alteration p))))
     (format #f "~a~a/~a" note (ly:pitch-octave p) alt)))

#(define (oracle-row context event kind pitch)
   (let* ((now (ly:context-current-moment context))
          (len (ly:event-property event 'length #f))
          (input (ly:event-property event 'origin))
          (origin (if (ly:input-location? input)
                      (ly:input-file-line-char-column input)
                      '("-" 0 0 0))))
     (format (oracle-out) "~a\t~a\t~a\t~a\t~a\t~a\t~a\t~a\t~a\t~a\t~a\n"
             oracle-score
             (ly:moment-main now) (ly:moment-grace now)
             (if (ly:moment? len)
                 (if (zero? (ly:moment-main len)) (ly:moment-grace len) (ly:moment-main len))
                 "-")
             kind pitch
             (oracle-staff context) (ly:context-id context)
             (basename (car origin)) (cadr origin) (caddr origin))))

#(define oracle-engraver
   (lambda (context)
     (make-engraver
      (listeners
       ((note-event engraver event)
        (let ((p (ly:event-property event 'pitch))
              (d (ly:event-property event 'drum-type)))
          (if (ly:pitch? p)
              (oracle-row context event "note" (oracle-pitch p))
              (oracle-row context event "drum" d))))
       ((rest-event engraver event)
        (oracle-row context event "rest" "-"))
       ((multi-measure-rest-event engraver event)
        (oracle-row context event "full-bar-rest" "-"))))))

#(define oracle-score-engraver
   (lambda (context)
     (make-engraver
      ((initialize engraver)
       (set! oracle-score (1+ oracle-score)))
      ((finalize engraver)
       (force-output (oracle-out))))))

\layout {
  \context { \Score \consists #oracle-score-engraver }
  \context { \Voice \consists #oracle-engraver }
  \context { \CueVoice \consists #oracle-engraver }
  \context { \DrumVoice \consists #oracle-engraver }
  \context { \TabVoice \consists #oracle-engraver }
  \context { \GregorianTranscriptionVoice \consists #oracle-engraver }
  \context { \VaticanaVoice \consists #oracle-engraver }
  \context { \MensuralVoice \consists #oracle-engraver }
  \context { \PetrucciVoice \consists #oracle-engraver }
  \context { \KievanVoice \consists #oracle-engraver }
}
