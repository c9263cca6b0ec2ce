package units_test

import (
	"fmt"

	"example.org/castwright/model/units"
)

func ExampleParse() {
	for _, text := range []string{`25 1/2"`, "64,8 cm", "60 - 2*3/4", "60 -"} {
		l, err := units.Parse(text, units.Imperial)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(units.FormatExact(l, units.Imperial), "=", units.FormatExact(l, units.Metric))
	}
	// Output:
	// 25 1/2" = 647.7 mm
	// 648 mm = 648 mm
	// 58 1/2" = 1485.9 mm
	// "60 -": at character 5: a number is missing at the end; for example 25 1/2" or 647.7 mm
}
