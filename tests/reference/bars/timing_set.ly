\version "2.24.0"

% The property behind \cadenzaOn, set by hand.
{
  \set Timing.timing = ##f c'1 d'2
  \set Timing.timing = ##t e'1 f'
  \set Score.timing = ##f g'1 g'4
  \set Score.timing = ##t a'1
  \set timing = ##f b'1 % of the voice: nobody asks it
  c''1
}
