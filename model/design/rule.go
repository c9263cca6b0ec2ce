package design

// The rules that a design can break. Values are looked at by [Design.Validate],
// geometry by package slab.
const (
	RuleRange     Rule = "range"     // a value lies outside its range
	RuleMissing   Rule = "missing"   // something needed is not there
	RuleDuplicate Rule = "duplicate" // two parts share an ID
	RuleKind      Rule = "kind"      // a kind that this version does not know
	RuleCount     Rule = "count"     // too many parts or points to reckon with
	RuleReference Rule = "reference" // names a part that does not exist
	RuleRelation  Rule = "relation"  // a relation that can't hold beside the others

	RuleZeroEdge   Rule = "zero-edge"    // two nodes lie on each other
	RuleRise       Rule = "rise"         // an arc that is more than a circle can be
	RuleDirection  Rule = "direction"    // a chain that runs clockwise
	RuleCrossing   Rule = "crossing"     // a chain that crosses or touches itself
	RuleCorner     Rule = "corner-size"  // a corner that does not fit between its edges
	RuleProfile    Rule = "profile-size" // a profile that does not fit the slab or edge
	RuleShape      Rule = "shape"        // a shape that has no area or can't be as sized
	RuleOutside    Rule = "outside"      // a part that lies outside the top, or an island outside its region
	RuleDepth      Rule = "depth"        // a channel or bed as deep as the slab
	RuleDegenerate Rule = "degenerate"   // an outline without area
	RuleFold       Rule = "fold"         // a river that bends more sharply than half its width
)
