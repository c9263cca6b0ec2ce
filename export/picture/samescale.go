package picture

// SameScale is the quarter views of several sets, for pictures of w x h pixels, with
// the eye equally far from all of them: what lies by their middles is seen at one
// scale. The largest just fits.
func SameScale(w, h int, sets ...*Set) []View {
	far := make([]float64, len(sets))
	most := 0.0
	for i, s := range sets {
		c := s.camera(View{Kind: Quarter}, w, h)
		mid := s.bounds.Centre()
		far[i] = c.eye.sub(v3{mid.X, mid.Y, s.body.t - 30}).norm()
		most = max(most, far[i])
	}
	out := make([]View, len(sets))
	for i, s := range sets {
		v := View{Kind: Orbit, Turn: -15, Rise: 34, Away: 1}
		if s.flip {
			v.Turn = -v.Turn
		}
		if far[i] > 0 {
			v.Away = most / far[i]
		}
		out[i] = v
	}
	return out
}
