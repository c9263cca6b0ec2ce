package store_test

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

func ExampleEncode() {
	top := design.Design{Outline: edit.Rectangle(61*units.Inch, 22*units.Inch), Thickness: 3 * units.Inch / 2}
	job := design.Job{Client: "Clay room", Units: units.Imperial,
		Options: []design.Option{{Name: "A", Design: top}}}
	fmt.Print(string(store.Encode(job)))
	// Output:
	// {
	//   "format": "castwright-job",
	//   "version": 1,
	//   "client": "Clay room",
	//   "units": "imperial",
	//   "options": [
	//     {
	//       "name": "A",
	//       "design": {
	//         "thickness_mm": 38.1,
	//         "outline": {
	//           "nodes": [
	//             {"at_mm": [0, 0]},
	//             {"at_mm": [1549.4, 0]},
	//             {"at_mm": [1549.4, 558.8], "edge": {"side": "wall"}},
	//             {"at_mm": [0, 558.8]}
	//           ]
	//         },
	//         "finish": {"colour": "#000000", "exposure": "cream", "polish": 0, "grind_mm": 0}
	//       }
	//     }
	//   ]
	// }
}

func ExampleDecode() {
	_, err := store.Decode([]byte("{\n  \"format\": \"castwright-job\",\n  \"version\": 1,\n  \"units\": \"cubits\"\n}"))
	fmt.Println(err)
	// Output: line 4, units: "cubits" is not known: use metric or imperial
}
