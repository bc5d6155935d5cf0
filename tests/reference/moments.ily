%% Asks the compiler when it comes to everything that has no length: commands, settings, what hangs on notes. One row each,
%%   score  moment  grace  kind  file  line  column
%% where kind is the compiler's name for what happens. What a context begins with (\with) has no place for the compiler:
%%   score  moment  grace  with  type  id  property
%% Used like oracle.ily; writes FILE.moments.tsv.
\version "2.24.0"

#(define moments-port #f)
#(define moments-score 0)
#(define (moments-out)
   (if (not moments-port)
       (set! moments-port (open-file (string-append (ly:parser-output-name) ".moments.tsv") "w")))
   moments-port)

#(define (moments-row context event)
   (let* ((now (ly:context-current-moment context))
          (kind (car (ly:event-property event 'class)))
          (input (ly:event-property event 'origin)))
     (if (and (ly:input-location? input)
              (not (memq kind '(note-event rest-event skip-event multi-measure-rest-event lyric-event))))
         (let ((origin (ly:input-file-line-char-column input)))
           (if (string-prefix? (ly:parser-output-name) (basename (car origin)))
               (format (moments-out) "~a\t~a\t~a\t~a\t~a\t~a\t~a\n"
                       moments-score (ly:moment-main now) (ly:moment-grace now) kind
                       (basename (car origin)) (cadr origin) (caddr origin)))))))

%% What \partCombine gives its own voices stands in no source.
%% An operation is (assign PROPERTY VALUE), (push GROB VALUE PATH ...), (consists ENGRAVER) and so on.
#(define (moments-context context event)
   (let ((now (ly:context-current-moment context)))
     (if (not (member (ly:event-property event 'id) '("one" "two" "shared" "solo" "null")))
         (for-each
          (lambda (operation)
            (format (moments-out) "~a\t~a\t~a\twith\t~a\t~a\t~a\n"
                    moments-score (ly:moment-main now) (ly:moment-grace now)
                    (ly:event-property event 'type) (ly:event-property event 'id) (cadr operation)))
          (ly:event-property event 'ops)))))

#(define moments-engraver
   (lambda (context)
     (make-engraver
      ((initialize engraver)
       (set! moments-score (1+ moments-score))
       (ly:add-listener (lambda (event) (moments-row context event))
                        (ly:context-events-below context)
                        'music-event 'SetProperty 'UnsetProperty 'Override 'Revert)
       (ly:add-listener (lambda (event) (moments-context context event))
                        (ly:context-events-below context) 'CreateContext))
      ((finalize engraver)
       (force-output (moments-out))))))

\layout {
  \context { \Score \consists #moments-engraver }
}
