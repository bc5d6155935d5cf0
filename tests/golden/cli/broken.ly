\version "2.24.0"
melody = {
  c4 d } } e f
}
{ \melody >> c'1 }
