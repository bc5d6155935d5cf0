\version "2.24.0"
\language "english" { cs'4 bff' as d,} \language "deutsch" { cis'4 es as b h ases } \include "italiano.ly" {do'4 sib fad'}
