package material

import "example.org/castwright/model/design"

// Defaults is what a new job starts with: rapid-setting mortar, casting resin and
// soda-lime glass, without prices, which are the maker's own.
func Defaults() design.Materials {
	return design.Materials{
		Currency: "$",
		Mix:      RapidMortar(),
		Resin:    MediumResin(),
		Glass:    SodaLimeGlass(),
	}
}
