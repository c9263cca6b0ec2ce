package design

// Bounds of a document. The reader refuses a file beyond them and an edit that
// would go beyond them, so that what is open can be saved and read again and
// drawing stays safe. Lengths are bounded by units.MaxLength.
const (
	MaxPoints    = 20_000        // points of all chains, rivers, lines and patterns of one design
	MaxJobPoints = 4 * MaxPoints // of all options; a new one must fit
	MaxRelations = 1_000         // relations of one design
	MaxHandling  = 1_000         // parts of one option that are locked or hidden
	MaxOptions   = 100           // options of a job
	MaxQuantity  = 1_000_000_000 // any mass, density, volume, time or price, of either sign
)
