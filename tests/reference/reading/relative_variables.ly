\version "2.24.0"
foo = { c e g } bar = \relative c'' { c e g } \relative c' { c' \foo d \bar e \foo }
