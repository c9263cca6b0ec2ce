package showing

import "example.org/castwright/export/picture"

// About is what stands about the top in pictures, as it was chosen here.
func (p *Page) About() picture.SetOptions { return p.photo.about }
