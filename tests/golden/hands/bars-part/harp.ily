\version "2.24.0"

harpOne = \relative c {
  c8 e g c e g c e |
  c,,8 e g c e g c e |
  c,,4 e g c |
  c2 e, |
}
