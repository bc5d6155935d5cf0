\version "2.24.0"

% Compound metres: as long as the sum of their parts, however the list is written.
{
  \compoundMeter #'((3 8) (2 4))
  c'1*7/8 d'1*7/8
  \compoundMeter #'(3 2 8)
  e'1*5/8 f'1*5/8
  \compoundMeter #'((3 1 8) (2 4))
  g'1 a'1
  \compoundMeter 2,3,8
  b'1*5/8 c''1*5/8
}
