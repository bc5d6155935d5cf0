%% Asks the compiler for its bar counter: one row a time step of each score,
%%   score  moment  grace  bar-number  position-in-bar
%% Used like oracle.ily; writes FILE.bars.tsv.
\version "2.24.0"

#(define bars-port #f)
#(define bars-score 0)
#(define (bars-out)
   (if (not bars-port)
       (set! bars-port (open-file (string-append (ly:parser-output-name) ".bars.tsv") "w")))
   bars-port)

#(define bars-engraver
   (lambda (context)
     (make-engraver
      ((initialize engraver)
       (set! bars-score (1+ bars-score)))
      ((process-music engraver)
       (let ((now (ly:context-current-moment context))
             (position (ly:context-property context 'measurePosition)))
         (format (bars-out) "~a\t~a\t~a\t~a\t~a\n"
                 bars-score (ly:moment-main now) (ly:moment-grace now)
                 (ly:context-property context 'currentBarNumber)
                 (if (ly:moment? position) (ly:moment-main position) "-"))))
      ((finalize engraver)
       (force-output (bars-out))))))

\layout {
  \context { \Score \consists #bars-engraver }
}
