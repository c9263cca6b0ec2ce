package picture

import "testing"

// Where the cover says that no thing is seen, no ray through the picture meets
// one.
func TestCover(t *testing.T) {
	s := built(poured(), SetOptions{Draft: true})
	for _, v := range []View{{Kind: Quarter}, {Kind: Top}, {Kind: Close}, {Kind: Orbit, Turn: 60, Rise: 10, Away: 0.3}} {
		g := s.room()
		c := s.camera(v, 200, 120)
		k := g.mesh.cover(&c)
		met, free := 0, 0
		for y := 0.25; y < 120; y += 0.5 {
			for x := 0.25; x < 200; x += 0.5 {
				r := c.ray(x, y)
				_, ok := g.mesh.hit(&r, far)
				if ok {
					met++
				}
				if !k.at(x, y) {
					if free++; ok {
						t.Fatalf("a thing is seen at (%g, %g) of view %+v", x, y, v)
					}
				}
			}
		}
		if met == 0 || v.Kind < Close && free < 240*400/8 {
			t.Errorf("view %+v: %d places show things, %d are known to show none", v, met, free)
		}
	}
}
